"""The HTML report: complete, self-contained, well-formed, and the same numbers as the answers."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from pathlib import Path

import pytest
import trainwright
from trainwright.parts import Records, parts_of
from trainwright.report import write

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
     "90.2 km/h", "120.6 km/h", "116 of 117 published ratios", "Not checked here", "Caution", "Formulas and sources", "not a rating"],
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
