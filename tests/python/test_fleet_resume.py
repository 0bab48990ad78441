"""Screening of a fleet: stopped, killed and resumed with the same bits, in constant memory."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import numpy as np
import pyarrow as pa
import pyarrow.parquet as pq
import pytest
from fleet_drives import arrow, drives, made, same_bits, units, written
from trainwright import Error, fleet
from trainwright.fleet import invented, run

HERE = Path(__file__).parent


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return written(tmp_path_factory.mktemp("telematics"), days=5, rows_of_group=5000)


def test_a_state_file_resumes_with_the_same_bits(folder: Path, tmp_path: Path) -> None:
    days = sorted(folder.glob("*.parquet"))
    copies = tmp_path / "days"
    copies.mkdir()
    state = tmp_path / "screening.state"
    for day in days[:2]:
        (copies / day.name).write_bytes(day.read_bytes())
    first = fleet.screen(copies, units(), state=state)
    assert first.rows < len(drives()["time_s"])
    for day in days[2:]:
        (copies / day.name).write_bytes(day.read_bytes())
    resumed = fleet.screen(copies, units(), state=state)
    same_bits(resumed.totals, fleet.screen(copies, units()).totals, without=("_row",))
    before = state.read_bytes()
    same_bits(fleet.screen(copies, units(), state=state).totals, resumed.totals)  # nothing left to read
    assert state.read_bytes() == before

    with pytest.raises(Error, match="other columns or options"):
        fleet.screen(copies, units(), state=state, aggregates=("damage",))
    (copies / days[0].name).write_bytes(days[1].read_bytes())
    with pytest.raises(Error, match="has changed"):
        fleet.screen(copies, units(), state=state)
    (copies / days[0].name).unlink()
    with pytest.raises(Error, match="not among these files"):
        fleet.screen(copies, units(), state=state)
    state.write_bytes(b"something else")
    with pytest.raises(Error, match="not a state file"):
        fleet.screen(copies, units(), state=state)


def test_a_file_that_cannot_be_read_does_not_cost_what_is_done(folder: Path, tmp_path: Path) -> None:
    for day in sorted(folder.glob("*.parquet")):
        (tmp_path / day.name).write_bytes(day.read_bytes())
    broken = sorted(tmp_path.glob("*.parquet"))[3]
    data = bytearray(broken.read_bytes())
    data[100:5000] = bytes(4900)  # the footer still tells how many rows there should be
    broken.write_bytes(data)
    with pytest.raises(Exception, match="."):
        fleet.screen(tmp_path, units(), state=tmp_path / "screening.state")
    broken.write_bytes((folder / broken.name).read_bytes())
    reads: list[str] = []
    with pytest.MonkeyPatch.context() as patch:
        count = run._count
        patch.setattr(run, "_count", lambda part, piece, *rest: (reads.append(piece.name), count(part, piece, *rest)))
        found = fleet.screen(tmp_path, units(), state=tmp_path / "screening.state")
    assert len(reads) == 2
    same_bits(found.totals, fleet.screen(folder, units()).totals, without=("_row",))


CHILD = """
import json, sys, time
sys.path.insert(0, {here!r})
from fleet_drives import units
from trainwright import fleet
from trainwright.fleet import read, run

def slowly(batches):
    for number, batch in enumerate(read_ahead(batches)):
        print("batch", flush=True)
        time.sleep(0.2)
        yield batch

read_ahead, run.ahead = run.ahead, slowly
read.BATCH_ROWS = 2000
found = fleet.screen({folder!r}, units(), state={state!r})
print(json.dumps({{"rows": found.rows, "finished": found.finished, "remarks": found.remarks, "html": found._repr_html_()}}), flush=True)
"""


def test_ctrl_c_keeps_what_is_done(folder: Path, tmp_path: Path) -> None:
    state = tmp_path / "screening.state"
    code = CHILD.format(here=str(HERE), folder=str(folder), state=str(state))
    child = subprocess.Popen([sys.executable, "-c", code], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    assert child.stdout
    for _ in range(8):  # some way into the second or third file
        child.stdout.readline()
    child.send_signal(signal.SIGINT)
    out, err = child.communicate(timeout=60)
    assert child.returncode == 0, err
    told = json.loads(out.strip().splitlines()[-1])
    assert 0 < told["rows"] < len(drives()["time_s"]) and told["finished"] is False
    assert any("Stopped before the end" in remark for remark in told["remarks"]) and "Stopped before the end" in told["html"]
    assert state.exists()
    resumed = fleet.screen(folder, units(), state=state)
    assert resumed.finished
    same_bits(resumed.totals, fleet.screen(folder, units()).totals, without=("_row",))


def test_a_killed_run_leaves_a_state_that_is_whole(folder: Path, tmp_path: Path) -> None:
    state = tmp_path / "screening.state"
    code = CHILD.format(here=str(HERE), folder=str(folder), state=str(state))
    child = subprocess.Popen([sys.executable, "-c", code], stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
    deadline = time.monotonic() + 60
    while not state.exists() and time.monotonic() < deadline:
        time.sleep(0.02)
    child.kill()
    child.wait()
    assert state.exists()
    same_bits(fleet.screen(folder, units(), state=state).totals, fleet.screen(folder, units()).totals, without=("_row",))


def test_memory_does_not_grow_with_the_rows(tmp_path: Path) -> None:
    """Sixty times the rows of one file through a process of its own; what it holds after ten and after sixty is the same."""
    path = tmp_path / "one.parquet"
    parts = [arrow({"truck": np.full(25_000, truck.name, dtype=object), **invented.drive(truck, 25_000)}) for truck in made()]
    pq.write_table(pa.concat_tables(parts), path)
    for number in range(60):
        os.link(path, tmp_path / f"copy_{number:02d}.parquet")
    code = f"""
import sys
sys.path[:0] = [{str(HERE)!r}, {str(HERE.parents[1] / "benches")!r}]
from pathlib import Path
from fleet_drives import units
from trainwright import fleet
files = sorted(Path({str(tmp_path)!r}).glob("copy_*.parquet"))
def resident():
    return next(int(line.split()[1]) for line in open("/proc/self/status") if line.startswith("VmRSS")) / 1024
fleet.screen(files[:10], units())
first = resident()
rows = fleet.screen(files, units()).rows
print(rows, first, resident())
"""
    rows, first, last = map(float, subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.split())
    assert rows == 60 * 225_000
    assert last - first < 40.0, f"{first:.0f} MB after 2.25 million rows, {last:.0f} MB after 13.5 million"
