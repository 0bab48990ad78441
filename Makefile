# Each target works as the first and only command on a fresh checkout. What they do: "Commands" in DEVELOPERS.md.
SHELL := bash
.SHELLFLAGS := -euo pipefail -c
.DELETE_ON_ERROR:
.PHONY: run test bench firmware header stubs schema
.PHONY: test-format test-lints test-docs test-rust test-header test-c test-python test-firmware

venv := .venv/bin
cbindgen := target/tools/bin/cbindgen
rust_sources := Cargo.toml Cargo.lock $(shell find core python/src -name '*.rs') python/Cargo.toml python/pyproject.toml

run: .venv/wheel
	$(venv)/trainwright demo --report target/report

bench: .venv/wheel .venv/test-tools
	$(venv)/python benches/compare.py
	$(venv)/python benches/fleet.py
	cargo bench --quiet --bench live_alarms
	$(venv)/python benches/live.py

firmware:
	ffi/firmware.sh

header: $(cbindgen)
	ffi/header.sh $(cbindgen) ffi/include/trainwright.h

stubs: .venv/wheel .venv/test-tools
	python/stubs.sh

schema:
	WRITE_SCHEMA=1 cargo test --quiet --test record committed_schemas

test: test-format test-lints test-docs test-rust test-header test-c test-python test-firmware
	@echo "test: all passed"

test-format:
	cargo fmt --all --check
	@echo "format: passed"

# Library code may not panic; test code may.
tests_may := $(foreach lint,unwrap_used expect_used panic indexing_slicing float_cmp,-A clippy::$(lint))
test-lints:
	cargo clippy --quiet --workspace -- -D warnings
	cargo clippy --quiet --workspace --tests --benches --examples -- -D warnings -A missing_docs $(tests_may)
	@echo "lints: passed"

test-docs:
	RUSTDOCFLAGS="-D warnings" cargo doc --quiet --workspace --no-deps
	@echo "docs: passed"

test-rust:
	cargo test --quiet
	@echo "rust: passed"

test-header: $(cbindgen)
	ffi/header.sh $(cbindgen) target/trainwright.h
	diff -u ffi/include/trainwright.h target/trainwright.h || { echo "the header is out of date: make header"; exit 1; }
	@echo "header: passed"

test-c:
	tests/c/check.sh
	@echo "c: passed"

test-python: test-rust test-c .venv/wheel .venv/test-tools
	$(venv)/python -m pytest -q tests/python
	@echo "python: passed"

test-firmware:
	ffi/firmware.sh
	@echo "firmware: passed"

$(cbindgen):
	cargo install --quiet cbindgen --version 0.29.4 --locked --root target/tools

.venv/python: python/requirements.txt
	python3 -c 'import ensurepip' 2>/dev/null || .ci/need python3-venv
	python3 -m venv .venv
	$(venv)/pip install --quiet --disable-pip-version-check --requirement $<
	touch $@

.venv/test-tools: tests/python/requirements.txt .venv/python
	$(venv)/pip install --quiet --disable-pip-version-check --requirement $<
	touch $@

.venv/wheel: .venv/python $(rust_sources)
	mkdir -p target
	$(venv)/maturin develop --quiet --profile wheel --manifest-path python/Cargo.toml >target/wheel.log 2>&1 || { cat target/wheel.log >&2; exit 1; }
	touch $@
