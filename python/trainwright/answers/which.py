"""Which gear set is fitted: a ratio counted on the bench against the tooth counts that may be inside."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from .. import Explanation, explain, hazard
from ..edge import number
from ..error import refusal
from ..judge import Reading
from ..sheet import Fact, Row, Sheet, Table
from ..train import Train, counted_ratio
from .gears import ratio

EXCLUDED = 3.0
"""Distance in standard uncertainties from which a candidate is called excluded: a chance below 0.3 % of being seen by accident."""


@dataclass(frozen=True)
class Count:
    """Pulses of the input and of the output counted over the same time, in one gear, without slip."""

    gear: str
    input_pulses: int
    output_pulses: int

    def ratio(self, *, input_teeth: int, output_teeth: int) -> Reading:
        """The counted ratio with its uncertainty, for speed wheels of these teeth."""
        return counted_ratio(
            input_pulses=self.input_pulses, output_pulses=self.output_pulses, input_teeth=input_teeth, output_teeth=output_teeth
        )


def which_sheet(
    candidates: Mapping[str, Train], counts: Sequence[Count], *, input_teeth: int, output_teeth: int, title: str, story: str = ""
) -> Sheet:
    """How far each candidate lies from each counted ratio, and which gears can tell the candidates apart at all."""
    ratios = {name: {gear.id: gear for gear in train.gears()} for name, train in candidates.items()}
    gears = [gear for gear in next(iter(ratios.values())) if all(gear in table for table in ratios.values())]
    can_tell = [gear for gear in gears if len({table[gear].ratio_exact for table in ratios.values()}) > 1]
    rows: list[Row] = []
    how: list[Explanation] = []
    data: list[dict[str, Any]] = []
    excluded: dict[str, str] = {}
    for count in counts:
        if count.gear not in gears:
            raise refusal("gear", f"no gear {count.gear!r} that every candidate has; they share {', '.join(gears) or 'none'}")
        reading = count.ratio(input_teeth=input_teeth, output_teeth=output_teeth)
        away = {name: (ratio(table[count.gear]) - reading.value) / reading.u for name, table in ratios.items()}
        data.append({"gear": count.gear, "ratio": reading.as_dict(), "away_in_u": away, "can_tell": count.gear in can_tell})
        if not how:
            pulses = {"input_pulses": count.input_pulses, "output_pulses": count.output_pulses}
            how = [
                next(iter(ratios.values()))[count.gear].explain(),
                explain("train.counted_ratio", {**pulses, "input_teeth": input_teeth, "output_teeth": output_teeth, "result": reading}),
            ]
        for name, distance in away.items():
            out = abs(distance) > EXCLUDED
            if out:
                excluded.setdefault(name, f"{number(abs(distance), 0)} standard uncertainties away in gear {count.gear}")
            remark = "excluded" if out else "fits" if count.gear in can_tell else "fits, as every candidate does in this gear"
            exact = str(ratios[name][count.gear].ratio_exact)
            rows.append(
                Row((count.gear, f"{reading.value:.6f} ± {reading.u:.6f}", name, exact, f"{ratio(ratios[name][count.gear]):.6f}",
                     f"{number(distance, 1)} u", remark), "quiet" if out else "")
            )  # fmt: skip
    left = [name for name in candidates if name not in excluded]
    found = f"Fitted: {left[0]}. " if len(left) == 1 else f"Still possible: {', '.join(left)}. " if left else "None of the candidates fits. "
    if excluded:
        found += f"Excluded: {'; '.join(f'{name}, {reason}' for name, reason in excluded.items())}. "
    if can_tell:
        found += f"Only gears {', '.join(can_tell)} can tell these candidates apart."
    elif len(candidates) > 1:
        found += "No gear can tell these candidates apart: in each their exact fractions are the same."
    return Sheet(
        title=title,
        story=story,
        answer=found.rstrip(),
        tables=[
            Table("Counted ratio against the candidates; ± one standard uncertainty u",
                  ("gear", ">counted", "candidate", ">exact", ">ratio", ">away", "remark"), rows)
        ],
        facts=[
            Fact("speed wheels", f"{input_teeth} and {output_teeth} teeth", "input and output"),
            Fact("gears that can tell", ", ".join(can_tell) or "none", "in the others the exact fractions are the same"),
        ],
        not_checked=["Slip: a slipping element moves the ratio more than another tooth count would. Count with light, steady load."],
        cautions=[hazard.caution("overspeed")],
        cards=["train.solve", "train.counted_ratio"],
        how=how,
        data={"counts": data, "gears_that_can_tell": can_tell, "excluded": excluded},
    )  # fmt: skip
