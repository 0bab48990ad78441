"""The HTML report: complete, self-contained, well-formed, and the same numbers as the answers."""

from __future__ import annotations

import io
import itertools
import re
from html.parser import HTMLParser
from pathlib import Path

import pytest
import trainwright
from click.testing import CliRunner
from rich.console import Console
from trainwright.cli import shop
from trainwright.parts import Records, parts_of
from trainwright.report import write, write_page
from trainwright.sheet import BLANK, FORM, Decision, Row, Sheet, Table

DEMO = Path(trainwright.__file__).parent / "demo"
VOID = {"meta", "link", "br", "img", "path", "use", "rect", "circle", "line", "stop"}


class Reader(HTMLParser):
    """Collects tags and text, and finds tags that are not closed."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.faults: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        if tag in VOID:
            return
        if not self.open or self.open.pop() != tag:
            self.faults.append(f"</{tag}> at {self.getpos()}")


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> str:
    records = Records.read([*sorted(DEMO.glob("*.toml")), *sorted(DEMO.glob("trains/*.toml"))])
    return write(list(parts_of(records)), tmp_path_factory.mktemp("report") / "index.html", title=records.title).read_text()


@pytest.fixture(scope="module")
def reader(page: str) -> Reader:
    reader = Reader()
    reader.feed(page)
    return reader


def test_every_tag_is_closed(reader: Reader) -> None:
    assert not reader.faults
    assert not reader.open


def test_nothing_comes_from_outside(page: str, reader: Reader) -> None:
    assert not [tag for tag, _ in reader.tags if tag in ("script", "link", "img", "iframe")]
    for _, attributes in reader.tags:
        for name in ("href", "src", "xlink:href"):
            assert (attributes.get(name) or "#").startswith("#")
    assert "@import" not in page
    assert not re.search(r"url\((?!#)", page)


def test_identifiers_are_unique_and_links_lead_somewhere(reader: Reader) -> None:
    identifiers = [attributes["id"] for _, attributes in reader.tags if "id" in attributes]
    assert len(identifiers) == len(set(identifiers))
    for tag, attributes in reader.tags:
        target = attributes.get("href") or attributes.get("xlink:href")
        assert target is None or target.lstrip("#") in identifiers, (tag, target)


def test_pictures_are_named_for_screen_readers(reader: Reader) -> None:
    pictures = [attributes for tag, attributes in reader.tags if tag == "svg"]
    assert len(pictures) >= 7
    assert all(attributes.get("role") == "img" and attributes.get("aria-label") for attributes in pictures)


def test_it_fits_phone_and_printer(page: str, reader: Reader) -> None:
    assert any(attributes.get("name") == "viewport" for _, attributes in reader.tags)
    assert "@media print" in page
    assert "@media (max-width" in page


@pytest.mark.parametrize(
    "text",
    ["NOT PROVEN", "NO-GO", "854760/201019", "FORBIDDEN: output at 6.24 times the input", "1408 kPa (204 psi)", "203 mL", "4.96 mm",
     "90.2 km/h", "120.6 km/h", "116 of 117 published ratios", "Not checked here", "Caution", "How it is worked out", "Result: ", "not a rating"],
)  # fmt: skip
def test_the_answers_are_in_it(page: str, text: str) -> None:
    assert text in page


def test_a_train_alone_gets_its_gears_and_states() -> None:
    records = Records.read([DEMO / "trains" / "two_sun_four_speed_a.toml"])
    assert [part.sheet.title.split(":")[0] for part in parts_of(records)] == ["Gears", "States"]
    assert len(list(parts_of(Records.read(sorted(DEMO.glob("trains/*.toml")))))) == 18 * 2 + 1


def test_words_of_the_record_cannot_become_markup(tmp_path: Path) -> None:
    family = (DEMO / "family.toml").read_text().replace("Corrib family: bench to road to fleet", "<b>bold</b> & more")
    path = tmp_path / "family.toml"
    path.write_text(family)
    records = Records.read([path])
    html = write(list(parts_of(records)), tmp_path / "out" / "report.html", title=records.title).read_text()
    assert "&lt;b&gt;bold&lt;/b&gt; &amp; more" in html
    assert "<b>bold" not in html


# ---- a page to print


def to_fill_in() -> Sheet:
    rows = [Row((f"F{number}", "0.040", "0.090", BLANK, BLANK)) for number in range(1, 4)]
    return Sheet("Fit sheet", "Measure and write.", form=FORM, tables=[Table("Fits", ("fit", ">least", ">most", ">measured", "by"), rows)])


def test_blanks_are_ruled_boxes_on_paper_and_lines_on_the_console(tmp_path: Path) -> None:
    html = write_page([to_fill_in()], tmp_path / "page.html").read_text()
    assert html.count('<td class="blank"><span class="unseen">to fill in</span></td>') == 6
    assert "<span>job</span><span>unit</span><span>date</span><span>name</span>" in html
    assert BLANK not in html
    console = Console(width=100, record=True, file=io.StringIO())
    to_fill_in().print(console)
    assert console.export_text().count(BLANK) == 6 + 4


def test_a_single_page_has_one_title_and_no_list_of_answers(tmp_path: Path) -> None:
    html = write_page([to_fill_in()], tmp_path / "page.html").read_text()
    assert html.count("<h1") == html.count("<h2>") == html.count("Fit sheet</h2>") == 1 and "<nav" not in html


def test_every_sheet_of_the_report_starts_a_page_with_blanks_for_job_and_name(page: str, reader: Reader) -> None:
    sections = [attributes for tag, attributes in reader.tags if tag == "section"]
    assert page.count("<span>job</span><span>unit</span><span>date</span><span>name</span>") == len(sections)
    printed = page[page.index("@media print") :]
    assert "main section { break-before: page" in printed and "details::details-content" in printed


def test_an_answer_is_also_a_page(tmp_path: Path) -> None:
    path = tmp_path / "capacity.html"
    given = ["capacity", str(DEMO / "family.toml"), "--gauge", "1470kPa", "--turbine", "660nm", "--page", str(path)]
    done = CliRunner().invoke(shop, given, catch_exceptions=False)
    assert done.exit_code == 0
    assert "<h2>Capacity of teal at 1470 kPa (213 psi)</h2>" in path.read_text()


# ---- a stranger's eye on the page


def test_a_strict_parser_finds_no_error(page: str, tmp_path: Path) -> None:
    html5lib = pytest.importorskip("html5lib")
    html5lib.HTMLParser(strict=True).parse(page)
    html5lib.HTMLParser(strict=True).parse(write_page([to_fill_in()], tmp_path / "page.html").read_text())


def test_headings_skip_no_level_and_tables_name_their_cells(reader: Reader) -> None:
    levels = [int(tag[1]) for tag, _ in reader.tags if re.fullmatch("h[1-6]", tag)]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(below <= above + 1 for above, below in itertools.pairwise(levels))
    assert all(attributes.get("scope") in ("col", "row") for tag, attributes in reader.tags if tag == "th")
    assert all(attributes.get("aria-label") for tag, attributes in reader.tags if tag == "table")
    assert dict(reader.tags[0][1]).get("lang") == "en"


def test_text_has_contrast_on_white() -> None:
    """WCAG 2.1, success criterion 1.4.3: a contrast of at least 4.5 to 1 for text; relative luminance as it defines it (from memory)."""
    style = (Path(trainwright.__file__).parent / "report" / "page.css").read_text()
    colors = dict(re.findall(r"--(\w+): (#[0-9a-f]{6});", style))

    def luminance(color: str) -> float:
        parts = [int(color[place : place + 2], 16) / 255 for place in (1, 3, 5)]
        linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]

    for name in ("ink", "quiet", "blue", "go", "open", "no"):
        assert (1.0 + 0.05) / (luminance(colors[name]) + 0.05) >= 4.5, name


def test_a_notebook_shows_a_sheet_as_the_report_does() -> None:
    """The same section, in a style that reaches nothing else of the notebook, and with the cautions."""
    sheet = Sheet(title="T<1>", answer="Yes & no.", decisions=[Decision("it holds", "NOT PROVEN", 0.7, "Basis.")], cautions=["Chock the wheels."])
    html = sheet._repr_html_()
    assert html is not None and html.count("<style>.trainwright {") == 1 and "body {" not in html
    for part in ("<h2>T&lt;1&gt;</h2>", "Yes &amp; no.", 'class="verdict not-proven"', "Chock the wheels.</li>"):
        assert part in html
