"""The examples of README.md work as printed. The Rust one is a documentation test of the core."""

import re
import shutil
import subprocess
from pathlib import Path

import trainwright
from trainwright import record
from trainwright.fleet import invented

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def examples(language: str) -> list[str]:
    return [str(block) for block in re.findall(rf"```{language}\n(.*?)```", README, re.DOTALL)]


def test_python_example(capsys):
    exec(compile(examples("python")[0], "README.md", "exec"), {})
    viscosities, chance = capsys.readouterr().out.strip().splitlines()
    assert viscosities.startswith("[64.19")
    assert 0.999 < float(chance) <= 1.0


def test_fleet_example(tmp_path, monkeypatch):
    """On the demonstration's records, and an hour of each of its trucks."""
    monkeypatch.chdir(tmp_path)
    demo = Path(trainwright.__file__).parent / "demo"
    shutil.copytree(demo, "shop")
    family, trucks = record.load(demo / "family.toml"), record.load(demo / "fleet.toml")
    invented.write_parquet("telematics", [invented.truck(family, trucks, name) for name in trucks.trucks], rows=3600, files=3)
    head, _, call = examples("python")[1].strip().rpartition("\n")
    found = {}
    exec(compile(head, "README.md", "exec"), found)
    ranked = eval(call, found)
    assert ranked.columns()["truck"][0] == "T13"


def test_c_example_compiles_without_a_warning(tmp_path):
    source = tmp_path / "readme.c"
    source.write_text(
        '#include "trainwright.h"\n' + examples("c")[0] + "\nint main(void) { return first_ratio(0, 0, 0) == 0; }\n"
    )
    flags = ["-std=c99", "-Wall", "-Wextra", "-Wpedantic", "-Wconversion", "-Werror"]
    include = f"-I{ROOT / 'ffi' / 'include'}"
    subprocess.run(["cc", *flags, include, "-c", str(source), "-o", str(tmp_path / "readme.o")], check=True)
