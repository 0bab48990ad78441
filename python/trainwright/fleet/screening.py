"""The answer of a screening: trucks in the order in which to look at them."""

from __future__ import annotations

import csv
import json
import os
from collections.abc import Mapping, Sequence
from html import escape
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from .. import version
from ..error import refusal
from .words import CAUTIONS, in_words

if TYPE_CHECKING:
    from .._native.fleet import Screen, Unit

HOUR_S = 3600.0
BY = {
    "damage": "worst_damage",
    "over_rating": "over_rating_h",
    "low_margin": "low_margin_h",
    "hot": "hot_h",
    "fluid_life": "life_used",
}
"""What may rank the trucks, and its column."""

BAD = ("missing", "not_available", "error", "reserved", "negative", "out_of_range")
SHOWN = 10
"""Trucks in the table of a notebook."""

COUNTED = ("rows", "gps_rows", "rank", "rank_best", "rank_worst")


class Screening:
    """Trucks ranked, each with its reason, what to do, and the interval of places that its gaps leave open."""

    def __init__(
        self,
        tally: Screen,
        units: Mapping[Any, Unit] | Unit,
        *,
        missing: Sequence[str] = (),
        by: str = "damage",
        files: int = 0,
        stopped: Sequence[str] = (),
    ) -> None:
        if by not in BY:
            raise refusal("by", f"{by!r} ranks nothing; give {', '.join(BY)}", "TEXT")
        self.tally = tally
        """The sums, to be merged with those of other rows."""
        self.totals: dict[str, Any] = tally.totals()
        """Every sum, by truck in the order of their names."""
        self.missing_columns = tuple(missing)
        self.files = files
        self.stopped = tuple(stopped)
        """Files that were not finished when it was stopped."""
        self.by = by
        self._units = units
        self._table = self._ranked()

    @property
    def finished(self) -> bool:
        """Whether every row was seen."""
        return not self.stopped

    @property
    def rows(self) -> int:
        """Rows seen."""
        return int(self.totals["rows"].sum())

    @property
    def remarks(self) -> list[str]:
        """What to know before trusting the list."""
        remarks = []
        if self.stopped:
            remarks.append(f"Stopped before the end: {len(self.stopped)} of {self.files or 1} inputs are not, or only partly, counted.")
        if self.missing_columns:
            remarks.append(f"Columns not given: {', '.join(self.missing_columns)}; what needs them is not formed.")
        if self.by == "damage" and not self._damages():
            remarks.append("No damage is formed (torque, speeds or the slope are missing): the order is by hours over the rating.")
        return remarks

    @property
    def cautions(self) -> tuple[str, ...]:
        """To print beside the list."""
        return CAUTIONS

    # ---- the table

    def _total(self, name: str) -> Any:
        """A column of the totals as floating point; NaN where it was not summed."""
        values = self.totals.get(name)
        return np.full(len(self.totals["rows"]), np.nan) if values is None else np.asarray(values, dtype=np.float64)

    def _damages(self) -> dict[str, Any]:
        found = {name.removeprefix("damage."): self._total(name) for name in self.totals if name.startswith("damage.")}
        formed = {name: values for name, values in found.items() if np.nansum(values) > 0.0}
        return formed

    def _ranked(self) -> dict[str, Any]:
        rows = self._total("rows")
        known = self._total("known_s")
        unknown = self._total("gap_s") + self._total("seconds.unknown") + self._total("seconds.no_torque") + self._total("seconds.stale")
        # A row that lacks both its gear and its torque counts twice in the unknown: the interval is rather too wide.
        moving = known - self._total("seconds.standing") - self._total("seconds.unknown") - self._total("seconds.stale")
        damages = self._damages()
        worst = np.full(len(rows), np.nan)
        worst_set = np.full(len(rows), "", dtype=object)
        for name, values in damages.items():
            greater = (values > worst) | (np.isnan(worst) & ~np.isnan(values))
            worst, worst_set = np.where(greater, values, worst), np.where(greater, name, worst_set)
        with np.errstate(divide="ignore", invalid="ignore"):
            most = worst * (1.0 + unknown / np.maximum(known - unknown + self._total("gap_s"), 1.0))
            gps = np.where(self._total("gps_over_speed.rows") > 0, self._total("gps_over_speed.mean"), self._total("gps_over_output.mean"))
            columns = {
                "truck": np.asarray(self.totals["truck"]),
                "worst_set": worst_set,
                "worst_damage": worst,
                "worst_damage_most": most,
                "over_rating_h": np.fmax(self._total("seconds.over_input"), self._total("seconds.over_output")) / HOUR_S,
                "greatest_use": self._total("greatest_share"),
                "greatest_use_gear": self._names("greatest_share_gear"),
                "low_margin_h": self._total("seconds.low_margin") / HOUR_S,
                "least_margin": self._total("least_margin"),
                "weakest": self._names("least_margin_element"),
                "hot_h": self._total("seconds.hot") / HOUR_S,
                "hottest_c": self._total("hottest_c"),
                "life_used": self._total("life_used"),
                "gps_over_shown": gps,
                "gps_rows": np.fmax(self._total("gps_over_speed.rows"), self._total("gps_over_output.rows")),
                "no_gear_share": self._total("seconds.no_gear") / np.maximum(moving, 1.0),
                "unused_share": self._unused() / np.maximum(rows, 1.0),
                "rows": rows,
                "known_h": known / HOUR_S,
                "unknown_h": unknown / HOUR_S,
            }
        key = columns[BY[self.by]]
        most_key = columns["worst_damage_most"] if self.by == "damage" else key * (1.0 + unknown / np.maximum(known, 1.0))
        if self.by == "damage" and not damages:
            key = columns["over_rating_h"]
            most_key = key * (1.0 + unknown / np.maximum(known, 1.0))
        order = np.lexsort((columns["truck"].astype(str), -np.nan_to_num(columns["over_rating_h"]), -np.nan_to_num(key, nan=-1.0)))
        best, last = _places(key, most_key)
        table = {"rank": np.arange(1, len(order) + 1), "rank_best": best[order], "rank_worst": last[order]}
        table |= {name: values[order] for name, values in columns.items()}
        for name in COUNTED:
            table[name] = np.nan_to_num(table[name]).astype(np.int64)
        words = [in_words({name: values[place] for name, values in table.items()}) for place in range(len(order))]
        table["reason"] = np.array([reason for reason, _ in words], dtype=object)
        table["action"] = np.array([action for _, action in words], dtype=object)
        return table

    def _unused(self) -> Any:
        unused = np.zeros(len(self.totals["rows"]))
        for name in ("bad_time_s", "duplicate", "reversed", "stale", "unknown", "no_torque"):
            unused += np.nan_to_num(self._total(f"rows.{name}"))
        return unused

    def _names(self, name: str) -> Any:
        values = self.totals.get(name)
        if values is None:
            return np.full(len(self.totals["rows"]), "", dtype=object)
        return np.array([value if isinstance(value, str) else "" for value in np.asarray(values, dtype=object)], dtype=object)

    # ---- as a person and as a program read it

    def __len__(self) -> int:
        return len(self._table["rank"])

    def __repr__(self) -> str:
        first = ", ".join(str(truck) for truck in self._table["truck"][:3])
        stopped = "" if self.finished else "; STOPPED before the end"
        return f"<screening of {len(self):,} trucks, {self.rows:,} rows; first {first}{stopped}>"

    def _repr_html_(self) -> str:
        columns = ("rank", "truck", "reason", "action", "worst_damage", "over_rating_h", "low_margin_h", "hot_h")
        heads = ("place", "truck", "why", "what to do", "damage, worst set", "h over rating", "h low margin", "h hot")
        lines = []
        for place in range(min(SHOWN, len(self))):
            cells = []
            for name in columns:
                value = self._table[name][place]
                if name == "rank":
                    best, last = self._table["rank_best"][place], self._table["rank_worst"][place]
                    text = f"{value}" if best == last else f"{value} ({best} to {last})"
                elif name == "worst_damage":
                    text = f"{value:.2g} {self._table['worst_set'][place]}" if value == value else "not formed"
                else:
                    text = f"{value:.1f}" if isinstance(value, float) else str(value)
                cells.append(f"<td style='text-align:left'>{escape(text)}</td>")
            lines.append(f"<tr>{''.join(cells)}</tr>")
        head = "".join(f"<th style='text-align:left'>{escape(name)}</th>" for name in heads)
        more = f"<p>{len(self) - SHOWN:,} more trucks.</p>" if len(self) > SHOWN else ""
        notes = "".join(f"<p><b>{escape(remark)}</b></p>" for remark in self.remarks)
        cautions = " ".join(self.cautions)
        return f"{notes}<table><thead><tr>{head}</tr></thead><tbody>{''.join(lines)}</tbody></table>{more}<p><small>{escape(cautions)}</small></p>"

    def columns(self) -> dict[str, Any]:
        """The ranked table as NumPy arrays by name."""
        return dict(self._table)

    def truck(self, name: Any) -> dict[str, Any]:
        """Everything known of one truck: its line of the table, every sum, and its bad values by column and kind."""
        places = np.flatnonzero(self._table["truck"] == name)
        if not len(places):
            raise refusal("name", f"no truck {name!r} among these rows", "TEXT")
        line = {column: _plain(values[places[0]]) for column, values in self._table.items()}
        at = int(np.flatnonzero(np.asarray(self.totals["truck"]) == name)[0])
        bad = self.tally.bad_values()
        mine = [row for row, truck in enumerate(bad["truck"]) if truck == name]
        return {
            **line,
            "totals": {column: _plain(values[at]) for column, values in self.totals.items()},
            "bad_values": [{key: _plain(bad[key][row]) for key in ("column", "kind", "rows")} for row in mine],
            "cautions": list(self.cautions),
        }

    def pictures(self, *, top: int = 15) -> dict[str, str]:
        """The first trucks as pictures, by caption, as SVG: damage with what the gaps leave open, and damage set by set. Needs matplotlib."""
        try:
            from ..report import plots
        except ImportError as error:
            raise refusal("pictures", f"they need {error.name}, which is not installed: pip install 'trainwright[report]'") from None

        table, damages = self._table, self._damages()
        places = [place for place in range(min(top, len(self))) if table["worst_damage"][place] > 0.0]
        if not places:
            raise refusal("pictures", "no damage is formed, so there is nothing to draw", "NO_ANSWER")
        at = {truck: place for place, truck in enumerate(self.totals["truck"])}
        trucks = [(str(table["truck"][place]), at[table["truck"][place]], place) for place in places]
        by_truck = [
            (name, (table["worst_damage"][place], table["worst_damage_most"][place]), (table["worst_damage"][place],) * 2, bool(table["over_rating_h"][place] > 0.0))
            for name, _, place in trucks
        ]
        by_set = {name: {of: float(values[number]) for of, values in damages.items()} for name, number, _ in trucks}
        return {
            "Damage of the worst set, and what unknown hours may add": plots.damage_by_truck("Damage of the worst set", by_truck),
            "Damage set by set": plots.damage_by_set("Damage set by set", by_set),
        }

    def as_dict(self, *, totals: bool = False) -> dict[str, Any]:
        """For JSON: trucks in order, what to know, and with ``totals`` every sum."""
        trucks = [{name: _plain(values[place]) for name, values in self._table.items()} for place in range(len(self))]
        found = {
            "rows": self.rows,
            "ranked_by": self.by,
            "finished": self.finished,
            "remarks": self.remarks,
            "cautions": list(self.cautions),
            "trainwright": version(),
            "trucks": trucks,
        }
        if totals:
            found["totals"] = {name: [_plain(value) for value in values] for name, values in self.totals.items()}
        return found

    def to_arrow(self) -> Any:
        """The ranked table as a pyarrow table, its remarks and cautions in the metadata and in the last column."""
        from .read import arrow

        pa = arrow()
        caution = pa.array([" ".join(self.cautions)] * len(self), pa.string()).dictionary_encode().cast(pa.string())
        columns = {name: pa.array(values.tolist() if values.dtype == object else values) for name, values in self._table.items()}
        metadata = {"remarks": "\n".join(self.remarks), "cautions": "\n".join(self.cautions), "trainwright": version()}
        return pa.table({**columns, "caution": caution}).replace_schema_metadata(metadata)

    def __arrow_c_stream__(self, requested_schema: Any = None) -> Any:
        """For Polars, DuckDB and whoever else takes Arrow."""
        return self.to_arrow().__arrow_c_stream__(requested_schema)

    def to_parquet(self, path: str | os.PathLike[str]) -> None:
        """The ranked table as a Parquet file."""
        table = self.to_arrow()
        import pyarrow.parquet as pq  # type: ignore[import-untyped,unused-ignore]

        pq.write_table(table, path)

    def to_csv(self, path: str | os.PathLike[str]) -> None:
        """The ranked table as text, the cautions in its last column."""
        caution = " ".join([*self.remarks, *self.cautions])
        with open(path, "w", newline="", encoding="utf-8") as file:
            writer = csv.writer(file)
            writer.writerow([*self._table, "caution"])
            for place in range(len(self)):
                cells = [_plain(values[place]) for values in self._table.values()]
                writer.writerow(["" if cell is None else cell for cell in cells] + [caution])

    def to_json(self, path: str | os.PathLike[str], *, totals: bool = False) -> None:
        """As :meth:`as_dict`."""
        Path(path).write_text(json.dumps(self.as_dict(totals=totals), indent=1, ensure_ascii=False), encoding="utf-8")

    def save(self, path: str | os.PathLike[str]) -> None:
        """To Parquet, CSV or JSON, by the ending of the name."""
        ways = {".parquet": self.to_parquet, ".csv": self.to_csv, ".json": self.to_json}
        way = ways.get(Path(path).suffix.lower())
        if way is None:
            raise refusal("path", f"{os.fspath(path)!r} ends in none of {', '.join(ways)}", "TEXT")
        way(path)


def _places(least: Any, most: Any) -> tuple[Any, Any]:
    """Best and worst place of each, as :func:`trainwright.duty.rank_intervals` has them, in n log n for large fleets."""
    known = ~(np.isnan(least) | np.isnan(most))
    above, below = np.sort(least[known]), np.sort(most[known])
    best = 1 + len(above) - np.searchsorted(above, most, side="right")
    last = len(least) - np.searchsorted(below, least, side="left")
    return np.where(known, best, 1), np.where(known, last, len(least))


def _plain(value: Any) -> Any:
    """A Python value; what was not formed is None."""
    if isinstance(value, (np.floating, float)):
        return None if value != value else float(value)
    return value.item() if isinstance(value, np.generic) else value
