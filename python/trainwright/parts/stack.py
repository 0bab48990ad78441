"""Parts about end play and clutch clearance: which shim, which ring."""

from __future__ import annotations

from collections.abc import Iterator

from ..answers.chain import chained, gains_of, measured_part
from ..answers.choice import Choosing, Piston, ring_sheet, shim_sheet, stroke_of, warm
from ..judge import Reading
from ..record import Family, Instruments
from ..stack import mean_of_steps
from .frame import Draw, Part, Records


def choice_parts(records: Records) -> Iterator[Part]:
    """The shim for every job with a gap, and the ring of B1 for every job with its clearance."""
    family = records.family
    if not family or not family.as_dict()["selective"]:
        return
    for job in records.asked("gap_mm"):
        gap = Reading(value=job["gap_mm"], u=job["gap_u_mm"] or 0.0)
        parts = [measured_part("gap", 1, gap)]
        if job["gasket_u_mm"]:
            parts.append(measured_part("gasket", -1, Reading(value=0.0, u=job["gasket_u_mm"]), "its height is in the gap; only its squeeze is not known"))
        play = family.hot_play()
        choosing = Choosing("shim", "end play", parts, family.shims(), warm=warm(play) if play else None)
        sheet = shim_sheet(choosing, title=f"{job['id']}: {job['title']}; the shim", story=job["story"])
        yield Part(sheet, _pictures(choosing))
    for job in records.asked("b1_clearance_mm", "b1_ring_fitted_mm"):
        if "B1" in family.elements_with_rings:
            read = _as_read(records.instruments, job["b1_clearance_mm"], job["b1_places"] or 1)
            yield _ring_part(family, read, job["b1_ring_fitted_mm"], f"{job['id']}: {job['title']}; the ring of B1")


def _as_read(instruments: Instruments | None, clearance_mm: float, places: int) -> Reading:
    """The mean of feeler readings at so many places; the job has taken the mean already, so no step is left in it."""
    u_of_one = instruments.reading("feeler", clearance_mm).u if instruments else 0.0
    return mean_of_steps([clearance_mm] * places, quantum=0.0, u_of_one=u_of_one).reading


def _ring_part(family: Family, read: Reading, fitted_mm: float, title: str) -> Part:
    listed = family.rings("B1")
    fitted = next((piece.thickness_mm for piece in listed.pieces if abs(piece.thickness_mm.value - fitted_mm) < 1e-6), Reading.exact(fitted_mm))
    parts = [measured_part("clearance as read", 1, read), measured_part("fitted ring", 1, fitted, "by the list")]
    choosing = Choosing("ring", "clearance", parts, listed, in_place_mm=fitted_mm)
    piston = Piston(stroke_of(family, "B1"))
    return Part(ring_sheet(choosing, title=title, as_read_mm=read, piston=piston), _pictures(choosing))


def _pictures(choosing: Choosing) -> dict[str, Draw]:
    """Each piece against the window, and the shares of the uncertainty with the chosen one."""
    choice = choosing.selection().choose(choosing.pieces.pieces)
    outcomes = choosing.outcomes()
    limits, target = choosing.pieces.window_mm, choosing.pieces.target_mm
    remarks = {choice.nearest_target: ["nearest target"]} if choice.found else {}
    if choice.found:
        remarks.setdefault(choice.least_risk, []).append("least risk")
    rows = [
        (f"{outcome.piece.thickness_mm.value:.2f}", outcome.cold.reading, outcome.cold.verdict, outcome.hot.reading if choosing.warm else None,
         ", ".join(remarks.get(place, [])))
        for place, outcome in enumerate(outcomes)
    ]  # fmt: skip
    caption = f"What each {choosing.piece} leaves (point, ± 2 standard uncertainties) against the {choosing.result} wanted (shaded)"
    caption += "; hollow: in the warm unit." if choosing.warm else "."
    name = f"{choosing.result}, mm"
    pictures: dict[str, Draw] = {
        caption: lambda plots: plots.pieces_against_window(
            f"{choosing.piece.capitalize()}s against the window", [plots.PieceRow(*row) for row in rows], (limits.lower, limits.upper), target, choosing.piece, name
        )
    }
    if choice.found:
        parts = choosing.with_piece(outcomes[choice.position])
        cold = outcomes[choice.position].cold
        shares = [(parts[gain.input].name, gain.share, gain.u_of_result) for gain in gains_of(cold, chained(parts).budget, None) if gain.share > 0]
        what = f"Where the uncertainty of the {choosing.result} comes from: the part to measure first stands first."
        pictures[what] = lambda plots: plots.shares_of_variance(f"Shares of the uncertainty of the {choosing.result}", shares, cold.reading.u)
    return pictures
