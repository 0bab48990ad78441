"""The same screening on a Spark cluster of separate worker processes, equal in every bit to one machine."""

from __future__ import annotations

import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pyarrow.parquet as pq
import pytest
from fleet_drives import ROOT, arrow, drives, same_bits, units, written
from trainwright import Error, fleet


def java() -> str | None:
    """Why there is no Java; None where there is."""
    if shutil.which("java"):
        return None
    tried = subprocess.run([ROOT / ".ci" / "need", "default-jre-headless"], capture_output=True, text=True)
    return None if shutil.which("java") else f"Java cannot be had: {(tried.stdout + tried.stderr).strip()[-300:]}"


@pytest.fixture(scope="module")
def spark(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Any]:
    pytest.importorskip("pyspark", reason="pyspark is not installed")
    if (why := java()) is not None:
        print(why)
        pytest.skip(why)
    from pyspark.sql import SparkSession

    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("SPARK_LOCAL_IP", "127.0.0.1")
        patch.setenv("PYSPARK_PYTHON", sys.executable)
        patch.setenv("PYSPARK_DRIVER_PYTHON", sys.executable)
        settings = {
            "spark.ui.enabled": "false",
            "spark.sql.shuffle.partitions": "3",
            "spark.default.parallelism": "4",
            "spark.sql.files.maxPartitionBytes": "200000",  # several pieces of a file, in several partitions
            "spark.sql.files.openCostInBytes": "1000",
            "spark.sql.execution.arrow.maxRecordsPerBatch": "1500",
            "spark.local.dir": str(tmp_path_factory.mktemp("spark")),
        }
        builder = SparkSession.builder.master("local-cluster[2,1,1024]").appName("trainwright")
        for name, value in settings.items():
            builder = builder.config(name, value)
        session = builder.getOrCreate()
        session.sparkContext.setLogLevel("ERROR")
        yield session
        session.stop()


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Files of several row groups; each truck in every file, with all the troubles of its logger."""
    return written(tmp_path_factory.mktemp("telematics"), days=4, rows_of_group=2000)


def test_a_cluster_gives_the_bits_of_one_machine(spark: Any, folder: Path) -> None:
    here = fleet.screen(folder, units())
    frame = spark.read.parquet(str(folder))
    assert frame.rdd.getNumPartitions() > 4
    there = fleet.screen(frame, units())
    same_bits(there.totals, here.totals, without=("_row",))
    lines = [[{name: value for name, value in truck.items() if not name.endswith("_row")} for truck in one.as_dict()["trucks"]] for one in (here, there)]
    assert lines[0] == lines[1]


def test_a_shuffled_frame_is_sorted_first(spark: Any, folder: Path) -> None:
    """The recipe for frames that no longer keep the order of their files: clean drives, mixed up, sorted again."""
    rows = drives(2000, 0.0)
    here = fleet.screen(rows, units())
    path = folder / "clean" / "one.parquet"
    path.parent.mkdir()
    pq.write_table(arrow(rows), path)
    mixed = spark.read.parquet(str(path)).repartition(3)
    there = fleet.screen(mixed.repartition("truck").sortWithinPartitions("truck", "time_s"), units())
    same_bits(there.totals, here.totals, without=("_row",))


def test_names_of_their_own_and_missing_columns(spark: Any, folder: Path) -> None:
    frame = spark.read.parquet(str(folder / "day_8.parquet")).withColumnRenamed("truck", "vehicle").drop("gps_km_h")
    found = fleet.screen(frame, units(), columns={"truck": "vehicle"})
    assert "gps_km_h" in found.missing_columns
    here = fleet.screen({name: values for name, values in _day(folder).items() if name != "gps_km_h"}, units())
    same_bits(found.totals, here.totals, without=("_row",))
    with pytest.raises(Error, match="no column truck"):
        fleet.screen(frame, units())


def _day(folder: Path) -> dict[str, Any]:
    table = pq.read_table(folder / "day_8.parquet")
    return {name: table[name].to_numpy(zero_copy_only=False) for name in table.column_names}
