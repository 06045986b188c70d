"""The hand sheet: every step and number is there, nothing lies over anything, and a class sheet tells of nobody."""

from __future__ import annotations

import re
from collections import Counter
from io import BytesIO
from itertools import combinations

import pikepdf
import pytest

from tapeline.blocks.neck_facing import FacingChoices
from tapeline.blocks.neck_finish import NeckFinish
from tapeline.export import letters_width, written
from tapeline.lengths import Length, cm
from tapeline.measures import Wearer
from tapeline.pattern import Source, StepKind
from tapeline.problems import InputError
from tapeline.sheets import HandSheet, hand_sheet
from tapeline.styles import STYLES
from tapeline.styles.top import FinishedNeckline
from tapeline.units import Unit, parse_length
from tests.accepted import compare
from tests.properties.drafts import draw
from tests.sheets.hand_sheets import (
    ARNE,
    MARIT,
    all_words,
    garment_of,
    pdf_of,
    sheet_of,
    text_of,
    title_of,
)
from tests.sheets.layout import GOLDEN, dump

UNITS = pytest.mark.parametrize("unit", list(Unit))


def tight(text: str) -> str:
    """Without any space."""
    return "".join(text.split())


@UNITS
@pytest.mark.parametrize("style", ["block", "tee"])
def test_the_text_of_every_step_is_in_the_file(style: str, unit: Unit) -> None:
    """Name, reason, what the hand does, and for what is drawn the reckoning, as the steps tell them."""
    text = text_of(pdf_of(sheet_of(style=style, unit=unit)))
    number, drawing = 0, False
    for step in garment_of(style=style).steps:
        if step.kind is StepKind.SECTION:
            continue
        number += 1
        drawing = drawing or step.kind is not StepKind.SIZE
        name = step.label.rpartition(".")[2].replace("_", "")
        assert re.search(rf"{number}([a-z]+:)?{name}", text), step.label
        assert tight(step.says) in text
        assert tight(step.how_text(unit)) in text
        worked_out = any(length.operator for length in step.lengths)
        for equation in step.equations(unit) if drawing or worked_out else ():
            assert tight(equation) in text, (number, equation)


@UNITS
def test_the_table_has_every_size_with_its_number(unit: Unit) -> None:
    """Beside the name of each size, with its step's number, stands what the step comes to."""
    text = text_of(pdf_of(sheet_of(unit=unit)))
    number = 0
    for step in garment_of().steps:
        number += step.kind is not StepKind.SECTION
        if step.kind is StepKind.SIZE:
            row = rf"{number}{step.label.replace('_', '')}(-{re.escape(tight(step.says))}\.)?"
            result = step.equations(unit)[-1].rpartition("=")[2]
            assert re.search(row + re.escape(tight(result)), text), step.label


def test_inches_are_told_as_a_ruler_has_them() -> None:
    """Every mark of the ruler lies within half a sixteenth, and a little rounding, of the number before it."""
    text = " ".join(words.text for page in sheet_of(unit=Unit.INCH).pages for words in page.words)
    text = re.sub(r"\s+", " ", text)
    found = re.findall(r"(-?[\d.]+) in (?:long )?\(on the ruler ([\d /]+) in\)", text)
    assert len(found) > 40
    for decimal, ruler in found:
        assert abs(float(decimal) - parse_length(f"{ruler} in", Unit.INCH) / 25.4) <= 1 / 32 + 0.0051


def test_a_line_is_told_with_its_length() -> None:
    """After each line's step: what the one who drew it can measure along it."""
    text = text_of(pdf_of(sheet_of()))
    lines = garment_of().lines
    assert len(lines) > 20
    for path in lines.values():
        assert tight(f"Check: it is {Length(path.length).show()} long.") in text


@pytest.mark.parametrize("style", sorted(STYLES))
@pytest.mark.parametrize("blank", [False, True])
def test_no_text_lies_over_text_or_off_the_paper(style: str, blank: bool) -> None:
    """In pages, tables and pictures, for each style, both filled and blank; boxes are clear of text too."""
    for unit in Unit:
        sheet = sheet_of("Arne", style, unit, None, blank)
        for page in sheet.pages:
            places = [
                (w.text, w.x, w.y - 0.2 * w.size_mm, w.x + letters_width(w.text, w.size_mm, bold=w.bold),
                 w.y + 0.72 * w.size_mm)
                for w in all_words(page)
            ]  # fmt: skip
            places += [("box", b.x, b.y, b.x + b.width, b.y + b.height) for b in page.boxes]
            for text, left, low, right, high in places:
                assert left >= 9, text
                assert right <= sheet.paper_mm[0] - 9, text
                assert low >= 9, text
                assert high <= sheet.paper_mm[1] - 9, text
            for a, b in combinations(places, 2):
                assert a[3] <= b[1] or b[3] <= a[1] or a[4] <= b[2] or b[4] <= a[2], (a, b)


@pytest.mark.parametrize("style", sorted(STYLES))
def test_all_that_is_new_is_named_in_its_picture(style: str) -> None:
    """Every point and line of a piece has its number in a picture, nearly all with the name, each once."""
    numbers = Counter[str]()
    named = 0
    for page in sheet_of("Arne", style).pages:
        for _, picture in page.pictures:
            new = [label.words.text for label in picture.labels if label.words.bold]
            numbers.update(text.split()[0] for text in new)
            named += sum(" " in text for text in new)
    steps = [s for s in garment_of("Arne", style).steps if s.kind is not StepKind.SECTION]
    drawn = [str(n) for n, s in enumerate(steps, start=1) if s.kind is not StepKind.SIZE]
    assert numbers == Counter(drawn)
    assert named > 0.95 * len(drawn)


def words_outside_pictures(sheet: HandSheet) -> str:
    """All that is written, without the running heads, wherever lines break."""
    texts = [w.text for page in sheet.pages for w in page.words if not re.search(r"page \d+ of|^Name:", w.text)]
    return tight("".join(texts))


@UNITS
def test_a_class_sheet_has_no_number_of_the_wearer(unit: Unit) -> None:
    """Two wearers with other tapes have the same class sheet, word for word; their own sheets differ."""
    other = Wearer("Somebody Else", MARIT.figure, {name: value * 1.07 for name, value in MARIT.tapes.items()})
    garment = draw(other, "tee", "slight")
    one = sheet_of(unit=unit, blank=True)
    two = hand_sheet(garment, title_of(other, "tee"), letters_width, unit=unit, blank=True)
    assert words_outside_pictures(one) == words_outside_pictures(two)
    assert sum(len(page.boxes) for page in one.pages) == sum(len(page.boxes) for page in two.pages)
    own = hand_sheet(garment, title_of(other, "tee"), letters_width, unit=unit)
    assert words_outside_pictures(sheet_of(unit=unit)) != words_outside_pictures(own)


def test_a_class_sheet_keeps_formulas_and_has_boxes() -> None:
    """Every formula, a box for every size that is no choice, and neither name, date, bar nor scale."""
    sheet = sheet_of(blank=True)
    text = text_of(pdf_of(sheet))
    garment = garment_of()
    for size in garment.sizes:
        if size.length.operator:
            assert tight(size.length.symbols()) in text
    assert sum(len(page.boxes) for page in sheet.pages) >= sum(s.source is not Source.CHOICE for s in garment.sizes)
    assert "Marit" not in text
    assert "2026" not in text
    assert "1:4" not in text
    assert "Check:" not in text
    assert "shapes,notsizes" in text


def test_the_drawings_of_a_class_sheet_are_the_same_size_for_everybody() -> None:
    """The longest piece is drawn 120 mm long, whoever the docket's wearer is: nothing can be measured on it."""
    for name in ("Marit", "Arne"):
        pictures = [p for page in sheet_of(name, blank=True).pages for _, p in page.pictures]
        lines = [stroke.path for picture in pictures for stroke in picture.strokes]
        heights = [[p.y for p in path.flattened(0.01)] for path in lines]
        assert max(max(h) - min(h) for h in heights) == pytest.approx(120, abs=8)


@UNITS
def test_head_of_every_page(unit: Unit) -> None:
    """Wearer, date, unit, and which page of how many."""
    sheet = sheet_of(unit=unit)
    for number, page in enumerate(sheet.pages, start=1):
        left, right = (words.text for words in page.words[:2])
        assert left == "Tee for Marit"
        lengths = "cm" if unit is Unit.CM else "inches"
        assert right == f"2026-01-31   lengths in {lengths}   page {number} of {len(sheet.pages)}"


def test_a_long_name_with_accents() -> None:
    """It is cut off in the running heads, with a sign for it, and stands whole on the first page."""
    name = 2 * "Zoë-Łucja Ångström-Öhlén af Sjöström och Ñuñez de la Peña y Håkansson-Çelik zu Weiß und Böhm"
    wearer = Wearer(name, MARIT.figure, dict(MARIT.tapes))
    sheet = hand_sheet(garment_of(), title_of(wearer, "tee"), letters_width)
    heads = [page.words[0] for page in sheet.pages]
    assert all(w.text.startswith("Tee for Zoë-Łucja Ångström") and w.text.endswith("…") for w in heads)
    for page in sheet.pages:
        first, second = page.words[:2]
        assert first.x + letters_width(first.text, first.size_mm) < second.x
    assert tight(name) in text_of(pdf_of(sheet))


def test_paper_is_as_large_as_the_lines_of_a_piece() -> None:
    """A facing has few points, and its lines reach much further: the paper is told for all of it."""
    line = FinishedNeckline(finish=NeckFinish.FACING, facing=FacingChoices(cm(4)))
    garment = draw(MARIT, "tee", "slight", neckline=line)
    sheet = hand_sheet(garment, title_of(MARIT, "tee"), letters_width)
    said = " ".join(words.text for words in all_words(sheet.pages[0]))
    found = re.search(r"front neck facing (\d+) by (\d+) cm", said)
    assert found is not None
    places = garment.piece("front_neck_facing").seam_line.sampled(0.5)
    needs = (places.max(axis=0) - places.min(axis=0)) / 10
    for told, need in zip(map(int, found.groups()), needs.tolist(), strict=True):
        assert need + 3 < told < need + 7


def test_letters_that_the_print_lacks_are_said() -> None:
    """As in the print of the pieces: the nearest Latin letters, and a note."""
    title = title_of(Wearer("Жанна", MARIT.figure, dict(MARIT.tapes)), "tee")
    sheet = hand_sheet(garment_of(), title, letters_width)
    made = written(sheet.pages, sheet.paper_mm, title, "hand sheet")
    assert [problem.code for problem in made.problems] == ["letters-replaced"]
    assert "TeeforZhanna" in text_of(made.data)


def test_a_scale_that_does_not_fit_is_refused_and_another_is_found() -> None:
    """At 1:2 a back is longer than the paper; a very long one goes to 1:5 by itself."""
    with pytest.raises(InputError) as caught:
        sheet_of(scale=2.0)
    assert caught.value.problems[0].code == "drawing-too-large"
    assert sheet_of().scale == 4
    assert sheet_of(scale=5.0).scale == 5
    low = hand_sheet(garment_of(), title_of(MARIT, "tee"), letters_width, paper_mm=(210, 230))
    assert low.scale == 5


def test_the_file_is_grey_and_always_the_same() -> None:
    """No colour operator (ISO 32000-1, 8.6.8) is in it, and twice the same bytes come out."""
    data = pdf_of(sheet_of())
    with pikepdf.open(BytesIO(data)) as file:
        assert len(file.pages) == len(sheet_of().pages)
        for page in file.pages:
            used = {str(instruction.operator) for instruction in pikepdf.parse_content_stream(page)}
            assert "g" in used
            assert not used & {"rg", "RG", "k", "K", "sc", "SC", "scn", "SCN"}
    assert pdf_of(sheet_of()) == data


def test_the_layout_is_as_it_was() -> None:
    """Pages, words and pictures of a block in inches are those that were accepted."""
    compare(GOLDEN, dump(sheet_of("Arne", "block", Unit.INCH)))
    assert ARNE.name in GOLDEN.read_text(encoding="utf-8")
