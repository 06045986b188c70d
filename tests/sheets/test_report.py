"""The report page: whole, readable by everybody, and complete in itself."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from functools import cache
from html.parser import HTMLParser
from importlib.resources import files
from itertools import pairwise

import pytest

from tapeline.draft import Draft
from tapeline.export import svg
from tapeline.finish import FinishChoices, Finished, Title, finish
from tapeline.measures import Figure, Wearer, doubts, size_wearer
from tapeline.pattern import Cloth, StepKind
from tapeline.problems import Problem, Severity
from tapeline.sheets import report
from tapeline.sheets.cutting import CAUTIONS
from tapeline.styles import STYLES
from tapeline.truing import Truing, true
from tapeline.units import Unit

VOID = {"meta", "link"}
NAME = 'Åse <b>"O\'Hara"</b> & Co'


class Reader(HTMLParser):
    """Reads a page strictly: every element is closed in its order."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.seen: list[tuple[str, dict[str, str | None]]] = []
        self.words: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Kept with what it says of itself."""
        self.seen.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """One that closes itself."""
        self.seen.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        """Must close the one that was opened last."""
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        """The words on the page."""
        if self.open[-1:] not in (["style"], ["title"]):
            self.words.append(data)


def drafted(name: str = "Marit", *, surveyed: bool = True) -> tuple[Finished, Truing, Wearer]:
    """A tee for an invented wearer."""
    standard = size_wearer("92")
    wearer = Wearer(name, Figure.WOMAN, {**standard.tapes, "waist": 830})
    style = STYLES["tee"]
    garment = style.page(Draft(wearer, {}), style.choices(), surveyed=surveyed)
    meaning = {girth: (low.mm, high.mm) for girth, (low, high) in style.meaning.items()}
    truing = true(garment, wearer, Cloth(), meaning=meaning, pull_on=True)
    return finish(garment, FinishChoices(), Title("tee.toml", name, "tee", "2031-05-02", "0.1.0")), truing, wearer


@cache
def page(name: str = "Marit", unit: Unit = Unit.CM, *, surveyed: bool = True) -> str:
    """Its report."""
    finished, truing, wearer = drafted(name, surveyed=surveyed)
    other, *_ = drafted(name, surveyed=not surveyed)
    return report(
        finished,
        truing,
        wearer,
        [*truing.findings, *doubts(wearer), Problem("seam-mismatch", Severity.ERROR, "invented")],
        svg(finished, unit),
        cloth=Cloth(),
        surveyed=surveyed,
        other_frame={size.name: size.length.mm for size in other.garment.sizes},
        unit=unit,
    )


def read(text: str) -> Reader:
    """A page, read to its end."""
    reader = Reader()
    reader.feed(text)
    reader.close()
    assert reader.open == []
    return reader


def words(text: str) -> str:
    """What a person reads, spaces evened."""
    return " ".join(" ".join(read(text).words).split())


def test_nothing_is_fetched_and_nothing_runs() -> None:
    """The page names no other place and holds no script, and its policy forbids both."""
    seen = read(page()).seen
    for _, attributes in seen:
        for key, value in attributes.items():
            assert not key.startswith("on")
            if key in ("href", "src", "action", "data"):
                assert value is not None
                assert value.startswith(("#", "data:"))
    assert not [tag for tag, _ in seen if tag in ("script", "iframe", "img", "object", "form")]
    assert "url(" not in page()
    assert "@import" not in page()
    assert "default-src 'none'" in page()


def test_links_lead_somewhere_and_names_are_given_once() -> None:
    """Every link on the page has its target, and no id stands twice."""
    seen = read(page()).seen
    ids = [attributes["id"] for _, attributes in seen if "id" in attributes]
    assert len(ids) == len(set(ids))
    for tag, attributes in seen:
        href = attributes.get("href") or ""
        if tag == "a":
            assert href.removeprefix("#") in ids
        for name in (attributes.get("aria-labelledby") or "").split():
            assert name in ids


def test_headings_go_down_one_level_at_a_time() -> None:
    """One first heading, and no level is skipped: a screen reader's list of headings makes sense."""
    levels = [int(tag[1]) for tag, _ in read(page()).seen if re.fullmatch(r"h[1-6]", tag)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(below - above <= 1 for above, below in pairwise(levels))


def test_tables_say_what_their_cells_are() -> None:
    """Every header cell has a scope, every table a caption, and every row begins with its name."""
    text = page()
    scopes = [attributes.get("scope") for tag, attributes in read(text).seen if tag == "th"]
    assert set(scopes) == {"col", "row"}
    assert text.count("<table>") == text.count("<caption>") > 5
    body_rows = re.findall(r"<tbody>(.*?)</tbody>", text, re.DOTALL)
    assert all(row.startswith('<th scope="row">') for body in body_rows for row in re.findall(r"<tr>(.*?)</tr>", body))


def test_every_picture_has_words() -> None:
    """A picture that is more than decoration says what it shows."""
    pictures = [attributes for tag, attributes in read(page()).seen if tag == "svg"]
    assert len(pictures) > 10
    for attributes in pictures:
        assert attributes["role"] == "img"
        assert attributes.get("aria-label") or attributes.get("aria-labelledby")


def test_a_name_is_words_and_never_markup() -> None:
    """Whatever a wearer is called stands on the page as it was written."""
    text = page(NAME)
    read(text)
    assert "<b>&quot;" not in text
    assert "&lt;b&gt;" in text
    assert NAME in words(text)


def test_worst_comes_first() -> None:
    """An error, then the doubt about the waist, then notes; and the top of the page forbids cutting."""
    kinds = re.findall(r'<li class="(error|doubt|note)">', page())
    assert kinds == sorted(kinds, key=["error", "doubt", "note"].index)
    assert kinds[0] == "error"
    assert "doubt" in kinds
    assert "Do not cut yet: 1 error to mend" in words(page())


def test_the_page_holds_all_that_was_measured() -> None:
    """Girths, seams with their parts, sizes, pieces and every step are there in the numbers of the garment."""
    finished, truing, wearer = drafted()
    text = words(page())
    for found in truing.girths:
        assert f"{found.garment_mm / 10:.2f}" in text
    for walked in truing.walks:
        assert walked.seam.name.replace("_", " ") in text
        for a, b in walked.parts if len(walked.parts) > 1 else ():
            assert f"{a / 10:.2f} to {b / 10:.2f}" in text
    for size in finished.garment.sizes:
        assert size.name.replace("_", " ") in text
        if size.sd_mm:
            assert f"± {size.sd_mm / 10:.2f}" in text
    for row in finished.cutting_list:
        assert f"{row.width_mm / 10:.2f}" in text
    labels = re.findall(r'<li class="(?:size|point|line)"><p><code>(.*?)</code>', page())
    assert labels == [step.label for step in finished.garment.steps if step.kind is not StepKind.SECTION]
    for name in wearer.tapes:
        assert f"{name.replace('_', ' ')} {wearer.show(name)}" in text


@pytest.mark.parametrize("surveyed", [True, False])
def test_both_frames_stand_side_by_side(surveyed: bool) -> None:
    """Rule and survey stand beside each other whichever of the two is drawn.

    The rule: a quarter of the upper chest less 1 (common practice, no source).
    """
    finished, _, wearer = drafted(surveyed=True)
    survey = next(size.length.mm for size in finished.garment.sizes if size.name == "armhole_depth")
    rule = wearer["upper_chest"] / 4 - 10
    row = re.search(r'<tr><th scope="row">armhole depth</th>(.*?)</tr>', page(surveyed=surveyed))
    assert row
    cells = re.findall(r">([^<]+)</td>", row[1])
    assert cells[:2] == [f"{rule / 10:.2f}", f"{survey / 10:.2f}"]
    assert ("survey" in cells[3]) is surveyed


def test_inches_throughout() -> None:
    """An inch docket is reported in inches."""
    _, truing, _ = drafted()
    text = words(page(unit=Unit.INCH))
    assert f"{truing.girths[0].garment_mm / 25.4:.2f}" in text
    assert not re.search(r"\d cm\b", text.partition("Findings")[0])


def test_cautions_are_said_once() -> None:
    """Blades, pins and irons have their word, before the construction."""
    text = words(page())
    for caution in CAUTIONS:
        assert text.count(caution) == 1


def test_the_drawing_is_the_one_that_was_given() -> None:
    """The pieces on the page are the export's drawing, line by line."""
    drawing = re.search(r"<svg xmlns.*?</svg>", page(), re.DOTALL)
    assert drawing
    paths = [element.get("d") for element in ET.fromstring(drawing[0]).iter("{http://www.w3.org/2000/svg}path")]
    given = svg(drafted()[0])
    assert len(paths) > 20
    assert all(f'd="{path}"' in given for path in paths)


def luminance(colour: str) -> float:
    """Relative luminance (WCAG 2.2, definition; read in the recommendation)."""
    channels = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


@pytest.mark.parametrize("theme", [0, 1], ids=["light", "dark"])
def test_text_and_lines_stand_out(theme: int) -> None:
    """Text has a contrast of 4.5 to 1 or more on every ground, lines that mean something 3 to 1.

    Both limits are those of WCAG 2.2, success criteria 1.4.3 and 1.4.11.
    """
    css = files("tapeline.sheets").joinpath("report.css").read_text(encoding="utf-8")
    colours = dict(re.findall(r"--(\w+): (#[0-9a-f]{6})", css.split(":root")[theme + 1]))

    def contrast(one: str, two: str) -> float:
        light, dark = sorted((luminance(colours[one]), luminance(colours[two])), reverse=True)
        return (light + 0.05) / (dark + 0.05)

    for ground in ("ground", "sheet", "cloth"):
        for text in ("ink", "quiet", "link", "error", "doubt", "note"):
            if not (ground == "cloth" and text != "ink"):
                assert contrast(text, ground) >= 4.5, (text, ground)
    for line in ("mark", "note", "error"):
        assert contrast(line, "ground") >= 3
        assert contrast(line, "body") >= 3
