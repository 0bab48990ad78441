"""Proof runs: the log of a dyno or a road test judged against the record of the unit, line by line, and what to run next.

One cell of a notebook::

    from trainwright import proof, record
    found = proof.prove("run.csv", record.load("family.toml"), "wren")
    found                                  # the answer with its tables
    found.verdict, found.line("slip in 6").why, [one.what for one in found.next]

The log is a CSV, Parquet or Arrow file, any Arrow table or frame, or arrays by name. Its columns end in their unit: ``time_s``,
``input_rpm``, ``output_rpm``, and what there is of ``engine_rpm``, ``pressure_kpa``, ``temp_c``, ``turbine_torque_nm`` (measured at
the input of the gear train) or ``engine_torque_nm``, ``commanded_gear``, ``lockup``; ``columns={"input_rpm": "n_turbine"}`` where
names differ. What it is judged against comes from :func:`asked_of`.

A GO says what this log shows, not that a unit is free of danger: dyno guards, two people on a road test, and the limits of the
makers of unit and vehicle come first.
"""

from __future__ import annotations

from .answers.proof import Proof, prove
from .answers.proof.asked import Asked, asked_of
from .answers.proof.line import Line
from .answers.proof.log import Log, read_log
from .answers.proof.next_runs import Next
from .answers.proof.seen import Seen

__all__ = ["Asked", "Line", "Log", "Next", "Proof", "Seen", "asked_of", "prove", "read_log"]
