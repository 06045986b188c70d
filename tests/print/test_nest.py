"""The nested print, read back: a layer for each size, which alone shows that size and no other, true to scale."""

from __future__ import annotations

from functools import cache
from io import BytesIO

import numpy as np
import pikepdf
import pypdfium2
import pytest

from tapeline.export import Print, Projection
from tapeline.geometry import Path, Point
from tapeline.project import nested_print, nested_projection
from tests.grade.runs import run_of
from tests.print.render import PX, READERS, lines_across, picture

pytestmark = pytest.mark.slow  # pages are rendered and measured

SIZES = ("Size 84", "Size 88", "Size 92")
SHARED = ("Seam lines", "Marks", "Words")
UNIT = 72 / 25.4


@cache
def made() -> Print:
    """Three sizes of a tee on A0."""
    return nested_print(run_of("84-92"), "A0")


def only(data: bytes, *names: str) -> bytes:
    """The same file with these layers shown and the others hidden."""
    with pikepdf.open(BytesIO(data)) as file:
        groups = list(file.Root.OCProperties.OCGs)
        file.Root.OCProperties.D.OFF = pikepdf.Array([g for g in groups if str(g.Name) not in names])
        file.Root.OCProperties.D.ON = pikepdf.Array([g for g in groups if str(g.Name) in names])
        out = BytesIO()
        file.save(out)
    return out.getvalue()


def cut_lines(number: int) -> list[Path]:
    """A size's own cut lines, drafted and finished, where the layout puts them."""
    size = run_of("84-92").sizes[number]
    level = {"front": "chest_level", "back": "chest_level", "sleeve": "cap_foot", "neckband": "centre_front"}
    found = []
    for piece, placed in zip(size.finished.pieces, made().layout.placements, strict=True):
        away = size.drafted.garment.points[f"{piece.piece.name}.{level[piece.piece.name]}"]
        shift = Point(0.0, 0.0) - away
        move = placed.move
        x, y = move.vector(shift).x, move.vector(shift).y
        found.append(piece.cut_line.moved(type(move)(move.a, move.b, move.c, move.d, move.e + x, move.f + y)))
    return found


def test_there_is_a_layer_for_each_size() -> None:
    """Sizes first, then what they share; seam lines are hidden at first, and shown when asked for."""
    with pikepdf.open(BytesIO(made().data)) as file:
        properties = file.Root.OCProperties
        assert [str(group.Name) for group in properties.OCGs] == [*SIZES, *SHARED]
        assert [str(group.Name) for group in properties.D.OFF] == ["Seam lines"]
    with pikepdf.open(BytesIO(nested_print(run_of("84-92"), "A0", seams=True, tables=False).data)) as file:
        assert "/OFF" not in file.Root.OCProperties.D


def strokes_of(layer: str) -> list[np.ndarray]:
    """Ends of the lines and curves drawn on a layer (on it alone), read from the drawing's own code, mm."""
    with pikepdf.open(BytesIO(made().data)) as file:
        (form,) = file.pages[0].resources.XObject.values()
        names = {key: str(group.Name) for key, group in form.Resources.Properties.items()}
        found: list[np.ndarray] = []
        inside: list[str] = []
        corners: list[tuple[float, float]] = []
        for instruction in pikepdf.parse_content_stream(form):
            assert isinstance(instruction, pikepdf.ContentStreamInstruction)
            operands = instruction.operands
            match str(instruction.operator):
                case "BDC":
                    inside.append(names[str(operands[1])])
                case "EMC":
                    inside.pop()
                case "m":
                    corners = [(float(operands[0]), float(operands[1]))]
                case "l":
                    corners.append((float(operands[0]), float(operands[1])))
                case "c":
                    corners.append((float(operands[4]), float(operands[5])))
                case "S" | "s":
                    if inside == [layer]:
                        found.append(np.array(corners) / UNIT)
    return found


@pytest.mark.parametrize("number", [0, 1, 2])
def test_a_layers_lines_are_the_sizes_own(number: int) -> None:
    """Every end of a line on a size's layer lies within 0.05 mm of that size's cut line or inside it, as notches do."""
    outlines = cut_lines(number)
    strokes = strokes_of(SIZES[number])
    knots = np.vstack([np.array([(p.x, p.y) for p in outline.knots]) for outline in outlines])
    drawn = np.vstack(strokes)
    # Each corner of the size's own cut lines is met by an end of a line on the layer.
    missed = [float(np.hypot(*(drawn - knot).T).min()) for knot in knots]
    assert max(missed) < 0.05
    on_line = [
        min(outline.distance_to(Point(*end)) for outline in outlines) for stroke in strokes for end in stroke[:1]
    ]
    assert np.mean(np.array(on_line) < 0.05) > 0.95


@pytest.mark.parametrize("reader", READERS)
def test_one_layer_shows_one_size(reader: str) -> None:
    """With one size's layer alone, ink lies along that size's cut line, and none along the others where they are apart.

    Looked at below the underarm of the front, where the sizes lie 10 mm from each other (a quarter of 4 cm).
    """
    layout = made().layout
    height = layout.size_mm[1]
    places = [underarm(number) for number in range(3)]
    x = sum(place.x for place in places) / 3 - 40
    y = sum(place.y for place in places) / 3 - 40
    margin = layout.paper.margin_mm
    box = (x + margin, height - y - 80 + margin, 80.0, 80.0)
    shown = []
    for name in SIZES:
        dark = picture(reader, only(made().data, name), 1, box) < 128
        assert dark.any()
        shown.append([share_dark(dark, cut_lines(other), (x, y)) for other in range(3)])
    for number, shares in enumerate(shown):
        others = [share for other, share in enumerate(shares) if other != number]
        assert shares[number] > 0.5
        assert max(others) < 0.15
    every = picture(reader, made().data, 1, box) < 128
    assert all(share_dark(every, cut_lines(number), (x, y)) > 0.5 for number in range(3))


def underarm(number: int) -> Point:
    """The end of the side's allowance at the underarm of the front, on the sheet."""
    names = [piece.piece.name for piece in run_of("84-92").sizes[number].finished.pieces]
    size = run_of("84-92").sizes[number]
    front = names.index("front")
    side = size.drafted.garment.piece("front").edge("side").path
    away = size.drafted.garment.points["front.chest_level"]
    return made().layout.placements[front].move.point(side.at(60.0) + (Point(0.0, 0.0) - away))


def share_dark(dark: np.ndarray, outlines: list[Path], corner: tuple[float, float]) -> float:
    """Which share of the places along cut lines inside a picture has ink within 0.25 mm."""
    hits = []
    rows, columns = dark.shape
    for outline in outlines:
        for step in range(int(outline.length / 0.5)):
            place = outline.at(step * 0.5)
            column, row = (place.x - corner[0]) * PX, rows - (place.y - corner[1]) * PX
            if 5 < column < columns - 5 and 5 < row < rows - 5:
                near = dark[int(row) - 2 : int(row) + 4, int(column) - 2 : int(column) + 4]
                hits.append(bool(near.any()))
    return float(np.mean(hits)) if hits else 0.0


def test_the_print_is_true_to_scale() -> None:
    """The upper test square measures 100 mm across in both readers, though the legend stands inside it."""
    for reader in READERS:
        pixels = picture(reader, made().data, 1, (10.0, 10.0, 130.0, 60.0))
        across = lines_across(pixels[-80:], 0)
        assert any(abs(right - left - 100.0) < 0.1 for left in across for right in across)


def test_words_of_all_sizes_are_read_back() -> None:
    """Panel, pieces and tables as text: which line is which size, where sizes meet, chart, grade table."""
    file = pypdfium2.PdfDocument(made().data)
    pages = [page.get_textpage().get_text_bounded() for page in file]
    for word in (
        "Tee for sizes 84 to 92",
        "Size 84",
        "Size 92",
        "Where the sizes meet",
        "the centre, on the chest line",
    ):
        assert word in pages[0]
    whole = "\n".join(pages)
    for word in ("The finished garment, cm", "Chest, round", "96.00", "Grade table, mm", "84 to 88", "10.0 / 0.0"):
        assert word in whole


def test_the_projection_has_the_same_layers_on_one_page() -> None:
    """One page, a layer for each size, lines as wide as asked and their dashes longer with them."""
    data = nested_projection(run_of("84-92"), Projection(width_mm=1200, line_mm=2.0, inverted=True)).data
    with pikepdf.open(BytesIO(data)) as file:
        assert len(file.pages) == 1
        assert [str(group.Name) for group in file.Root.OCProperties.OCGs] == [*SIZES, *SHARED]
        (form,) = file.pages[0].resources.XObject.values()
        code = form.read_bytes().decode("latin-1")
        dash = f"[{12 * 2.0 * UNIT:.4f}"[:6]
        assert dash in code


def test_the_same_sizes_give_the_same_bytes() -> None:
    """Nothing of the clock or the machine is in the file."""
    again = nested_print(run_of("84-92"), "A0")
    assert again.data == made().data
