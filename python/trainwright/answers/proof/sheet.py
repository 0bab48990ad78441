"""A proof run in words: the answer, what failed, and tables of gears, suspects, shifts, pressure and the rest."""

from __future__ import annotations

from collections.abc import Callable
from math import floor, isfinite, log10
from typing import TYPE_CHECKING, Any

from ... import Explanation, hazard
from ...edge import number
from ...sheet import Decision, Fact, Row, Sheet, Table
from .. import rule_in_words
from ..gears import ratio
from .asked import Asked
from .line import ORDER, Line
from .lost import suspect_table
from .ratios import by_ratios
from .seen import GREATEST_RPM, REPEATS, Seen
from .sensors import sensor_fault
from .shifts import ENDS_S
from .slip import chances_of, factors_of
from .state import STILL_S, USED_SHARE

if TYPE_CHECKING:
    from . import Proof

SHOWN = 8
"""Decisions that a sheet shows at most; all of them stand in its tables."""


def proof_sheet(proof: Proof, *, title: str, story: str = "") -> Sheet:
    """The answer: how many lines passed, what did not, what to run next; then gears, shifts and the rest in tables."""
    seen, asked = proof.seen, proof.asked
    return Sheet(
        title=title,
        story=story,
        answer=_answer(proof),
        decisions=_decisions(proof),
        tables=[*_next_table(proof), *_gear_table(proof), *_suspect_tables(proof), *suspect_table(seen), *_shift_table(proof), *_pressure_table(proof), _other_table(proof), *_why_table(proof)],
        facts=[*_log_facts(seen), *(Fact(*source) for source in asked.sources), Fact("verdict", "by chance", rule_in_words(asked.rule))],
        not_checked=_not_checked(seen, asked),
        cautions=[hazard.caution(name) for name in ("turning shafts", "road test", "hot fluid", "overspeed")],
        cards=_cards(proof),
        how=_how(proof),
        data=proof.as_dict(),
    )  # fmt: skip


def _answer(proof: Proof) -> str:
    counts, seen = proof.verdicts(), proof.seen
    seconds = seen.log.time_s[-1] - seen.log.time_s[0]
    lasted = f"{number(seconds, 0)} s" if seconds < 600 else f"{number(seconds / 60, 0)} min"
    words = [f"{counts['GO']} GO, {counts['NO-GO']} NO-GO, {counts['NOT PROVEN']} NOT PROVEN in {lasted}"]
    bad = [line.about for line in _failed(proof)]
    words.append(f"NO-GO: {', '.join(bad)}" if bad else "Nothing failed")
    if proof.next:
        words.append(f"Run next: {proof.next[0].what.rstrip('.')}")
    return ". ".join(words) + "."


def _failed(proof: Proof) -> list[Line]:
    """The lines that are NO-GO by themselves, not by another one."""
    return [line for line in proof.lines if line.verdict == "NO-GO" and not line.data.get("follows")]


def _decisions(proof: Proof) -> list[Decision]:
    open_ = [line for line in proof.lines if line.verdict == "NOT PROVEN" and line.chance is not None]
    return [
        Decision(line.about, line.verdict, line.chance, _sentence(line.why), _sentence(line.do))
        for line in (_failed(proof) or open_)[:SHOWN]
    ]


def _sentence(text: str) -> str:
    return f"{text[0].upper()}{text[1:]}." if text else ""


def _next_table(proof: Proof) -> list[Table]:
    if not proof.next:
        return []
    rows = [Row((str(place), str(len(one.lines)), one.what), "governs" if place == 1 else "") for place, one in enumerate(proof.next, 1)]
    return [Table("Run next", (">#", ">lines", "what"), rows, "Lines: how many of the open ones it can settle.")]


def _gear_table(proof: Proof) -> list[Table]:
    if sensor_fault(proof.seen):
        return []
    rows, idle = [], []
    for name in proof.seen.gears:
        of_ratio = proof.line(f"ratio in {name}")
        if of_ratio.verdict == "NOT PROVEN" and not of_ratio.data["in_gear_s"]:
            idle.append(name)
            continue
        measured = of_ratio.data.get("ratio")
        ratio_text = _with_u(measured, of_ratio.data["ratio_u"]) if measured is not None else "·"
        off = f"{number(of_ratio.reading.value, 2)} %" if of_ratio.reading else "·"
        if of_ratio.data.get("follows") == "lost":
            rows.append(Row((name, number(of_ratio.data["in_gear_s"], 0), "does not come", off, of_ratio.verdict, "·", "·"), of_ratio.verdict))
            continue
        of_slip = proof.line(f"slip in {name}")
        slip = f"{number(of_slip.reading.value, 1)}" if of_slip.reading else "·"
        cells = (name, number(of_ratio.data["in_gear_s"], 0), ratio_text, off, of_ratio.verdict, slip, of_slip.verdict)
        worst = proof.of_gear(name)
        rows.append(Row(cells, "" if worst == "GO" else worst))
    if not rows:
        return []
    note = "± is twice the standard uncertainty. Slip at the input: the mean; after an alarm the greatest half second."
    if idle:
        note += f" NOT PROVEN, not driven: {', '.join(idle)}."
    return [Table("Gears", ("gear", ">s", ">ratio", ">off", "ratio is", ">slip rpm", "slip is"), rows, note)]


def _with_u(value: float, u: float) -> str:
    """A value with twice its standard uncertainty, both to the decimals that the uncertainty has.

    >>> _with_u(1.7567375, 0.000047)
    '1.756737 ± 0.000094'
    """
    decimals = min(max(1 - floor(log10(2 * u)), 2), 6) if u > 0 else 6
    return f"{number(value, decimals)} ± {number(2 * u, decimals)}"


def _suspect_tables(proof: Proof) -> list[Table]:
    tables, seen = [], proof.seen
    for line in proof.lines:
        if line.group != "slip" or line.verdict != "NO-GO" or not line.data.get("suspects"):
            continue
        rows = []
        for element, chance in chances_of(seen, line.data["suspects"]).items():
            also = [name for name in seen.gears if element in factors_of(seen, name) and name != line.data["gear"]]
            others = [name for name in seen.gears if name not in also and name != line.data["gear"]]
            size = number(line.data["element_rpm"][element], 0) if element in line.data["element_rpm"] else "·"
            rows.append(Row((element, Decision("", "", chance, "").percent, size, " ".join(also), " ".join(others))))
        note = "Chance: among these, from the slip and its absence in the gears driven, since it came up where it did in this log; similar load, one fault."
        tables.append(Table(f"Who slips in {line.data['gear']}", ("element", ">chance", ">slip rpm", "would slip in", "would not slip in"), rows, note))
    return tables


def _shift_table(proof: Proof) -> list[Table]:
    shifts = [line for line in proof.lines if line.group == "shift" and "count" in line.data]
    if not shifts:
        return []
    numbers: list[tuple[str, Callable[[dict[str, Any]], float], int]] = [
        (">s", lambda shift: float(shift["inertia_s"]), 2), (">flare rpm", lambda shift: float(shift["flare_rpm"]), 0),
        (">dip rpm", lambda shift: float(shift["dip_rpm"]), 0), (">kJ", lambda shift: float(shift["energy_j"]) / 1000, 1), (">K", lambda shift: float(shift["rise_k"]), 0),
    ]  # fmt: skip
    known = [column for column in numbers if any(isfinite(column[1](line.data)) for line in shifts)]
    rows = [
        Row((line.about, str(line.data["count"]), *(_size(value(line.data), decimals) for _, value, decimals in known), line.verdict), "" if line.verdict == "GO" else line.verdict)
        for line in shifts
    ]
    columns = ("shift", ">seen", *(name for name, _, _ in known), "verdict")
    note = "s: time of the speed change. Flare: input above the old gear. Dip: output below its trend, a tie-up."
    heat = " kJ and K: at the element that closes." if any(name in columns for name in (">kJ", ">K")) else ""
    return [Table("Shifts, the worst of each kind", columns, rows, note + heat)]


def _size(value: float, decimals: int) -> str:
    return number(value, decimals) if value == value else "·"


def _pressure_table(proof: Proof) -> list[Table]:
    rows = []
    for line in proof.lines:
        if line.group != "pressure" or line.reading is None:
            continue
        data, chance = line.data, Decision("", line.verdict, line.chance, "").percent
        cells = (data["gear"], number(data["torque_nm"], 0), number(line.reading.value, 0), number(data["needed_kpa"], 0), data["element"], chance, line.verdict)
        rows.append(Row(cells, "" if line.verdict == "GO" else line.verdict))
    note = "The half second of each gear in which the pressure was nearest to its need. Needs: with the strongest return spring, without the oil head."
    return [Table("Pressure against need", ("gear", ">N·m", ">kPa", ">needs kPa", "of", ">chance", "verdict"), rows, note)] if rows else []


def _other_table(proof: Proof) -> Table:
    rows = []
    for line in proof.lines:
        own = {"ratio": "gear", "slip": "gear", "shift": "count", "pressure": "torque_nm"}
        if own.get(line.group, "?") in line.data:
            continue
        rows.append(Row((line.verdict, line.about, line.why), "" if line.verdict == "GO" else line.verdict))
    return Table("Everything else", ("verdict", "line", "why"), rows)


def _why_table(proof: Proof) -> list[Table]:
    """What to do about the lines that neither a decision nor the list of runs has; lines with the same answer stand together."""
    told = {line.about for line in _failed(proof)[:SHOWN]} | {about for one in proof.next for about in one.lines}
    grouped: dict[tuple[str, str], list[str]] = {}
    for line in sorted(proof.lines, key=lambda line: ORDER.index(line.verdict)):
        if line.verdict != "GO" and line.do and line.about not in told and not line.data.get("follows"):
            grouped.setdefault((line.verdict, line.do), []).append(line.about)
    rows = [Row((", ".join(abouts), do), verdict) for (verdict, do), abouts in grouped.items()]
    return [Table("What else to do", ("line", "what to do"), rows)] if rows else []


def _log_facts(seen: Seen) -> list[Fact]:
    log = seen.log
    facts = [Fact("rows", f"{len(log.time_s):,}", f"every {log.sample_s:.3g} s; {'; '.join(log.remarks) or 'read as it is'}")]
    named = {ours: theirs for ours, theirs in log.theirs.items() if ours != theirs}
    if named:
        facts.append(Fact("columns", str(len(log.theirs)), ", ".join(f"{theirs} as {ours}" for ours, theirs in named.items())))
    for name, words in (("input_rpm", "input speed"), ("output_rpm", "output speed"), ("engine_rpm", "engine speed")):
        if name in seen.sensors:
            sensor = seen.sensors[name]
            step = f"step {sensor.step:g} rpm" if sensor.step else "no step"
            facts.append(Fact(words, step, f"noise {sensor.noise:.2g} rpm besides, both found in the log"))
    return facts


def _not_checked(seen: Seen, asked: Asked) -> list[str]:
    torque = seen.log.torque_nm == seen.log.torque_nm
    return [
        *([] if torque.any() else ["Load: an element that never had to hold shows no slip. Without torque in the log no line says at which load it held."]),
        *([] if asked.torque_u_rel or not torque.any() else ["Torque: taken as exact. Give --torque-u for an honest chance."]),
        *([] if asked.pressure_u_kpa or "pressure_kpa" not in seen.log else ["Pressure sensor: only its step and noise are counted. Give --pressure-u for an honest chance."]),
        "Calibration of the speed sensors besides their tooth counts, and faults that come and go.",
        f"A value that stands {REPEATS} times as long as usual counts as stale, a speed above {number(GREATEST_RPM, 0)} rpm as impossible, a temperature that shows one value for {number(STILL_S, 0)} s as possibly stuck, a log with {number(100 * USED_SHARE, 0)} % usable values as good; the time of a shift is known to ± {number(2 * ENDS_S, 1)} s: our own choices.",
    ]


def _cards(proof: Proof) -> list[str]:
    groups = {line.group for line in proof.lines if line.reading}
    cards = ["train.solve", "live.gear_chances", "live.ratio", "live.wrong_teeth", "live.swapped", "judge.judge"]
    cards += ["train.fit_ratio"] if len(by_ratios(proof.seen.family)) > 1 else []
    cards += ["live.judge_slip", "live.threshold_for", "live.run_length"] if "slip" in groups else []
    cards += ["live.weigh_suspects"] if proof.seen.suspects else []
    cards += ["live.last_shift", "live.dip_rpm"] if proof.seen.shifts else []
    cards += ["live.energy_j"] if any(line.about.startswith("heat of") and line.reading for line in proof.lines) else []
    cards += ["train.diagnose"] if any("lost" in line.data for line in proof.lines) else []
    cards += ["live.temp_stuck"] if proof.seen.of_kind("temperature stuck") else []
    cards += ["hydraulic.gear_pressure", "clutch.review"] if "pressure" in groups else []
    return [*cards, *(["converter.lockup_slip"] if "lock-up" in groups else [])]


def _how(proof: Proof) -> list[Explanation]:
    seen = proof.seen
    first = next((name for name in seen.driven() if ratio(seen.gears[name]) > 0), None)
    return [seen.gears[first].explain()] if first else []
