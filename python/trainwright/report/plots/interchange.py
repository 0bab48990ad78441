"""The picture of a family's parts: parts as boxes, joints as lines, a matched set marked."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from textwrap import wrap

from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patches import FancyArrowPatch, FancyBboxPatch, Patch

from .frame import BLUE, INK, ORANGE, PURPLE, QUIET, drawing

STYLES: dict[str, str | tuple[float, tuple[float, ...]]] = {"fit": "-", "cover": (0, (6, 3)), "match": (0, (1.2, 2.2))}
"""Lines by the kind of joint."""

FORCED, MACHINED, NEVER = "forced", "machined", "never"
BOX_WIDTH, BOX_HEIGHT, COLUMN, ROW = 1.12, 0.52, 1.46, 0.76
"""Of a part, and from one to the next, in inches."""
MOST_COLUMNS = 6
"""Then a chain turns back in the next line."""


@dataclass(frozen=True)
class Link:
    """A joint between two parts. ``state``: holds (nothing), ``forced`` (broken: the neighbor comes along), ``machined``, ``never``."""

    first: str
    second: str
    kind: str
    state: str = ""


def parts_graph(
    title: str, parts: Sequence[str], links: Sequence[Link], *, marked: Iterable[str] = (), asked: str = "", fixed: Iterable[str] = ()
) -> str:  # fmt: skip
    """Parts and their joints; the marked set in bold frames, the part asked for filled, broken joints crossed."""
    marked, fixed = set(marked), set(fixed)
    places = _layout(parts, links)
    width = max(x for x, _ in places.values()) + BOX_WIDTH
    height = max(y for _, y in places.values()) + BOX_HEIGHT
    with drawing(title, width + 0.3, height + 1.0) as (axes, picture):
        axes.set_xlim(-0.15, width + 0.15)
        axes.set_ylim(height + 0.15, -0.85)
        axes.set_aspect("equal")
        axes.axis("off")
        for link in links:
            same = [other for other in links if {other.first, other.second} == {link.first, link.second}]
            _draw_link(axes, link, places, beside=0.14 * (same.index(link) - (len(same) - 1) / 2))
        for part in places:
            _draw_part(axes, part, places[part], is_marked=part in marked, is_asked=part == asked, is_fixed=part in fixed)
        _draw_legend(axes, links, has_set=bool(marked), has_fixed=bool(fixed & set(places)))
    return picture.svg


def _draw_part(axes: Axes, part: str, place: tuple[float, float], *, is_marked: bool, is_asked: bool, is_fixed: bool) -> None:
    x, y = place
    edge, width = (BLUE, 2.4) if is_marked else (QUIET, 1.0)
    face = "#d6e4f1" if is_asked else "#eef4fa" if is_marked else "#e9ecef" if is_fixed else "white"
    box = FancyBboxPatch(
        (x + 0.06, y + 0.06), BOX_WIDTH - 0.12, BOX_HEIGHT - 0.12, boxstyle="round,pad=0.06", facecolor=face, edgecolor=edge,
        linewidth=width, hatch="////" if is_fixed else None, zorder=3,
    )  # fmt: skip
    if is_fixed:
        box.set_edgecolor(QUIET)
    axes.add_patch(box)
    text = "\n".join(wrap(part, 12 if is_marked else 14, max_lines=2, placeholder="…"))
    weight = "bold" if is_marked else "normal"
    backing = {"facecolor": face, "edgecolor": "none", "pad": 1.2} if is_fixed else None
    axes.text(x + BOX_WIDTH / 2, y + BOX_HEIGHT / 2, text, ha="center", va="center", fontsize=9.5, fontweight=weight, zorder=4, bbox=backing)


def _draw_link(axes: Axes, link: Link, places: Mapping[str, tuple[float, float]], beside: float) -> None:
    """A joint; ``beside`` moves it off the middle where the same two parts have several."""
    (x1, y1), (x2, y2) = places[link.first], places[link.second]
    color = {FORCED: ORANGE, MACHINED: BLUE, NEVER: PURPLE}.get(link.state, INK)
    same_column, bend = abs(x1 - x2) < COLUMN / 2, 0.0
    if same_column and abs(y1 - y2) < 1.5 * ROW:
        upper, lower = min(y1, y2), max(y1, y2)
        x = x1 + BOX_WIDTH / 2 + beside
        start, end = (x, upper + BOX_HEIGHT), (x, lower)
    elif same_column:  # around what stands between them
        upper, lower = min(y1, y2) + BOX_HEIGHT / 2, max(y1, y2) + BOX_HEIGHT / 2
        start, end = (x1 + BOX_WIDTH, upper + beside), (x1 + BOX_WIDTH, lower + beside)
        bend = -0.8 * (COLUMN - BOX_WIDTH) / (lower - upper)
    else:
        (left, y_left), (right, y_right) = sorted([(x1, y1), (x2, y2)])
        start = (left + BOX_WIDTH, y_left + BOX_HEIGHT / 2 + beside)
        end = (right, y_right + BOX_HEIGHT / 2 + beside)
    line = FancyArrowPatch(
        start, end, arrowstyle="-", connectionstyle=f"arc3,rad={bend}", color=color, linewidth=2.2 if link.state else 1.3,
        linestyle=STYLES[link.kind], shrinkA=0, shrinkB=0, zorder=2,
    )  # fmt: skip
    axes.add_patch(line)
    if link.state:
        out = 0.4 * (COLUMN - BOX_WIDTH) if bend else 0.0
        middle = ((start[0] + end[0]) / 2 + out, (start[1] + end[1]) / 2)
        axes.plot(*middle, marker=MARKS[link.state], color=color, markersize=9, markerfacecolor="white", markeredgewidth=2.0, zorder=5)


MARKS = {FORCED: "x", MACHINED: "o", NEVER: "s"}


def _draw_legend(axes: Axes, links: Sequence[Link], *, has_set: bool, has_fixed: bool) -> None:
    words = {"fit": "fit", "cover": "cover", "match": "equal or wrong"}
    kinds = [kind for kind in STYLES if any(link.kind == kind for link in links)]
    entries: list[Line2D | Patch] = [Line2D([], [], color=INK, linewidth=1.3, linestyle=STYLES[kind], label=words[kind]) for kind in kinds]
    states = {FORCED: (ORANGE, "breaks: its neighbor comes along"), MACHINED: (BLUE, "breaks: machined"), NEVER: (PURPLE, "breaks: nothing mends it")}
    for state, (color, label) in states.items():
        if any(link.state == state for link in links):
            marker = Line2D([], [], color=color, linewidth=2.2, marker=MARKS[state], markersize=9, markerfacecolor="white", markeredgewidth=2, label=label)
            entries.append(marker)
    if has_set:
        entries.append(Patch(facecolor="#eef4fa", edgecolor=BLUE, linewidth=2.4, label="the matched set (filled: the part asked for)"))
    if has_fixed:
        entries.append(Patch(facecolor="#e9ecef", edgecolor=QUIET, hatch="////", label="belongs to the unit"))
    axes.legend(handles=entries, loc="upper left", bbox_to_anchor=(0.0, 1.0), ncols=3, borderpad=0, fontsize=9, handlelength=2.8, columnspacing=1.6)


def _layout(parts: Sequence[str], links: Sequence[Link]) -> dict[str, tuple[float, float]]:
    """Upper left corners of the boxes: each group of parts that hang together in columns by its distance from the best-connected
    part, the groups beside each other as long as there is room. Parts without a joint are left out. The same input gives the
    same picture."""
    neighbors: dict[str, list[str]] = {part: [] for part in parts}
    for link in links:
        for one, other in ((link.first, link.second), (link.second, link.first)):
            if other not in neighbors[one]:
                neighbors[one].append(other)
    places: dict[str, tuple[float, float]] = {}
    x = y = row_height = 0.0
    widest = MOST_COLUMNS * COLUMN
    groups = [_columns(group, neighbors) for group in _groups([part for part in parts if neighbors[part]], neighbors)]
    for columns in sorted(groups, key=lambda columns: (-len(columns), -max(map(len, columns)))):
        lines = [columns[first : first + MOST_COLUMNS] for first in range(0, len(columns), MOST_COLUMNS)]
        width = max(map(len, lines)) * COLUMN
        if x and x + width > widest:
            x, y, row_height = 0.0, y + row_height, 0.0
        top = y
        for turn, line in enumerate(lines):
            height = max(map(len, line)) * ROW
            for place, column in enumerate(line):
                across = len(lines[0]) - 1 - place if turn % 2 else place
                for below, part in enumerate(column):
                    places[part] = (x + across * COLUMN, top + (height - len(column) * ROW) / 2 + below * ROW)
            top += height
        x, row_height = x + width + 0.2, max(row_height, top - y)
    return places


def _groups(parts: Iterable[str], neighbors: Mapping[str, Sequence[str]]) -> list[list[str]]:
    """Parts that hang together."""
    groups, seen = [], set[str]()
    for part in parts:
        if part in seen:
            continue
        group, waiting = [], [part]
        while waiting:
            one = waiting.pop(0)
            if one not in seen:
                seen.add(one)
                group.append(one)
                waiting += neighbors[one]
        groups.append(group)
    return groups


def _columns(group: Sequence[str], neighbors: Mapping[str, Sequence[str]]) -> list[list[str]]:
    """A group in columns: from an end of its longest chain, by the number of joints away; within a column near the neighbors."""
    start = min(group, key=lambda part: (-max(_distances(part, neighbors).values()), len(neighbors[part]), group.index(part)))
    away = _distances(start, neighbors)
    columns: list[list[str]] = [[] for _ in range(max(away.values()) + 1)]
    for part in group:
        columns[away[part]].append(part)
    for before, column in zip(columns, columns[1:]):
        rank = {part: place for place, part in enumerate(before)}

        def middle(part: str, rank: Mapping[str, int] = rank) -> float:
            near = [rank[other] for other in neighbors[part] if other in rank]
            return sum(near) / len(near) if near else 0.0

        column.sort(key=middle)
    return columns


def _distances(start: str, neighbors: Mapping[str, Sequence[str]]) -> dict[str, int]:
    away, waiting = {start: 0}, [start]
    while waiting:
        one = waiting.pop(0)
        for other in neighbors[one]:
            if other not in away:
                away[other] = away[one] + 1
                waiting.append(other)
    return away
