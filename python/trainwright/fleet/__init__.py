"""A fleet at a time: telematics rows in, a ranked list of trucks with reasons out.

>>> from trainwright import fleet
>>> fleet.COLUMNS[:2]
('truck', 'time_s')

One cell of a notebook, from a folder of Parquet files::

    from trainwright import fleet, record
    units = fleet.units(record.load("family.toml"), record.load("fleet.toml"), record.load("fluids.toml"))
    fleet.screen("telematics/*.parquet", units)

On a Spark cluster, the wheel installed on its executors (:mod:`trainwright.fleet.spark`)::

    fleet.screen(spark.read.parquet("telematics/"), units)

From Polars, streamed, and the answer back as a frame::

    rows = pl.scan_parquet("telematics/*.parquet").filter(pl.col("depot") == "north")
    ranked = pl.DataFrame(fleet.screen(rows, units))

From DuckDB, and SQL over the answer::

    ranked = fleet.screen(duckdb.sql("SELECT * FROM 'telematics/*.parquet' WHERE depot = 'north'"), units).to_arrow()
    duckdb.sql("SELECT truck, reason FROM ranked WHERE rank <= 20")

Where names differ, ``columns={"temp_c": "sump_f"}``; where the trucks of the rows are built like those of the record,
``units(..., trucks={"V00001": "T12"})``. Long work goes on where it stopped with ``state="fleet.state"``.

Towing results defer to the vehicle maker's ratings, placards and local law; damage ranks and promises no life.
"""

from .._native.fleet import AGGREGATES, FLAGS, OUTPUTS, Gear, Holding, Limits, Screen, Unit
from .read import COLUMNS
from .run import screen
from .screening import Screening
from .units import units

__all__ = ["AGGREGATES", "COLUMNS", "FLAGS", "OUTPUTS", "Gear", "Holding", "Limits", "Screen", "Screening", "Unit", "screen", "units"]
