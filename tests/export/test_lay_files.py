"""A lay plan's files, each read back by another reader than its writer, within 0.05 mm of the plan."""

from __future__ import annotations

import io
import math
import re
import xml.etree.ElementTree as ET

import pikepdf
import pytest
from ezdxf.filemanagement import read
from shapely import LinearRing

from tapeline.export import lay_dxf, lay_pdf, lay_picture, lay_plot
from tapeline.geometry import Outline, Point
from tapeline.lay import LayCloth, LayLine, LayPiece, LayPlan, Placement, Spread
from tapeline.problems import InputError
from tapeline.received import received
from tapeline.units import Unit
from tests.export.test_plotter import interpreted

WITHIN_MM = 0.05
NUMBER = re.compile(r"-?\d+(\.\d+)?")
FRONT = tuple(Point(x, y) for x, y in ((0, 0), (400, 0), (430, 120), (380, 240), (0, 250)))
BAND = tuple(Point(x, y) for x, y in ((0, 0), (90, 0), (90, 200), (0, 200)))


def plan(count: int = 1, spread: Spread = Spread.OPEN, width: float = 900.0) -> LayPlan:
    """Fronts and bands along the cloth, some turned over; `count` times the same, one after the other."""
    lines = (
        LayLine("grain", (Point(50, 100), Point(300, 100))),
        LayLine("notch", (Point(200, 0), Point(200, 5))),
        LayLine("mark", (Point(10, 10), Point(90, 15), Point(120, 30))),
    )
    front = LayPiece("front", "Zoë", FRONT, 1, 1, garments=count, title="Front", lines=lines)
    band = LayPiece("band", "Zoë", BAND, garments=count, title="Neckband")
    places = []
    for number in range(1, count + 1):
        x = (number - 1) * 550.0
        places += [
            Placement("Zoë/front", number, x, 0.0),
            Placement("Zoë/front", number, x, 510.0, turned_over=True),
            Placement("Zoë/band", number, x + 540.0, 10.0, math.pi / 2),
        ]
    return LayPlan(LayCloth("shell", width, spread=spread), (front, band), tuple(places))


def rings(made: LayPlan) -> list[LinearRing]:
    """The outlines of the plan."""
    return [LinearRing([(p.x, p.y) for p in outline]) for outline in made.outlines]


def same(found: list[LinearRing], meant: list[LinearRing]) -> bool:
    """Whether each outline is there once, no further off than allowed."""
    left = list(meant)
    for ring in found:
        near = [other for other in left if other.hausdorff_distance(ring) < WITHIN_MM]
        if not near:
            return False
        left.remove(near[0])
    return not left


def ring_of(points: list[tuple[float, float]] | Outline) -> LinearRing:
    """Closed, from places of any kind."""
    return LinearRing([(p.x, p.y) if isinstance(p, Point) else p for p in points])


@pytest.mark.parametrize("unit", Unit)
def test_the_dxf_is_read_back_as_pieces(unit: Unit) -> None:
    """Our own reader finds every piece where it lies, with grain and notch; the library finds nothing to mend."""
    made = plan(3)
    file = lay_dxf(made, unit)
    found = received(file.data, "lay.dxf")
    assert same([ring_of(piece.outline.knots[:-1]) for piece in found.pieces], rings(made))
    assert sum(piece.grain is not None for piece in found.pieces) == 6
    assert sum(len(piece.notches) for piece in found.pieces) == 6
    audit = read(io.StringIO(file.data.decode("ascii"))).audit()
    assert not audit.errors
    assert not audit.fixes
    assert [problem.code for problem in file.problems] == ["letters-replaced"]
    assert b"Front, Zoe 3" in file.data


@pytest.mark.parametrize("second", [False, True])
def test_the_plotter_file_draws_the_plan(second: bool) -> None:
    """Pen 1 draws every outline and notch in units of 1/40 mm; words name every piece."""
    made = plan(2)
    data = lay_plot(made, second=second).data
    inner = data.removeprefix(b"\x1bE\x1b%0B").removesuffix(b"\x1b%0A\x1bE")
    drawn = interpreted(inner, ("PS", "NP", "PW", "PG"))
    chains = [[(x / 40, y / 40) for x, y in line] for line in drawn.lines[1]]
    assert same([LinearRing(chain) for chain in chains if chain[0] == chain[-1]], rings(made))
    assert sum(chain[0] != chain[-1] for chain in chains) == 4
    assert len(drawn.words) == len(made.placements)


def drawn_lines(data: bytes) -> list[list[list[tuple[float, float]]]]:
    """The closed lines of each page of a PDF in mm, read from its instructions."""
    pages = []
    with pikepdf.open(io.BytesIO(data)) as file:
        for page in file.pages:
            at, places, closed, stack = (0.0, 0.0), [], [], []
            for step in pikepdf.parse_content_stream(page):
                numbers = [float(n) for n in map(str, step.operands) if NUMBER.fullmatch(n)]
                match str(step.operator):
                    case "q":
                        stack.append(at)
                    case "Q":
                        at = stack.pop()
                    case "cm":
                        at = (at[0] + numbers[4], at[1] + numbers[5])
                    case "m":
                        places = [(at[0] + numbers[0], at[1] + numbers[1])]
                    case "l":
                        places.append((at[0] + numbers[0], at[1] + numbers[1]))
                    case "h":
                        closed.append([(x * 25.4 / 72, y * 25.4 / 72) for x, y in places])
            pages.append(closed)
    return pages


def test_the_print_is_true_to_scale_and_not_mirrored() -> None:
    """On the one page every outline lies a quarter turn from the plan, in the middle of its margins."""
    made = plan(2)
    file = lay_pdf(made)
    (page,) = drawn_lines(file.data)
    strip = made.cloth.strip_mm
    meant = [ring_of([(10 + strip - p.y, 10 + p.x) for p in outline]) for outline in made.outlines]
    meant.append(ring_of([(10, 10), (10 + strip, 10), (10 + strip, 10 + made.length_mm), (10, 10 + made.length_mm)]))
    assert same([ring_of(line) for line in page if len(line) > 2], meant)
    with pikepdf.open(io.BytesIO(file.data)) as pdf:
        box = [float(n) * 25.4 / 72 for n in pdf.pages[0].mediabox]
    assert box[2:] == pytest.approx([strip + 20, made.length_mm + 20], abs=0.01)


def test_a_long_lay_goes_on_over_pages() -> None:
    """Twelve metres take three pages, none longer than a page may be; neighbours share a strip, nothing is lost."""
    made = plan(22)
    file = lay_pdf(made)
    with pikepdf.open(io.BytesIO(file.data)) as pdf:
        heights = [float(page.mediabox[3]) * 25.4 / 72 for page in pdf.pages]
        assert "UserUnit" not in str(pdf.pages[0].obj.keys())
    assert file.pages == len(heights) == 3
    assert max(heights) <= 5080.01
    assert sum(heights) - 3 * 20 - 2 * 40 == pytest.approx(made.length_mm, abs=0.1)


def test_cloth_wider_than_a_page_is_refused() -> None:
    """There is no page for it."""
    with pytest.raises(InputError) as caught:
        lay_pdf(plan(width=6000))
    assert caught.value.problems[0].code == "page-too-long"


def test_the_same_is_written_twice() -> None:
    """No hour, no random mark, in any of the files."""
    made = plan(2)
    for write in (lay_dxf, lay_pdf, lay_plot):
        assert write(made) == write(made)


def test_the_picture_is_read_whatever_a_plan_calls_its_pieces() -> None:
    """A letter that XML does not allow, as an edited plan may have, is left out; all others stay."""
    band = LayPiece("band", "Zoë & Ida\x01", BAND, title="Neck<band>")
    drawn = lay_picture(LayPlan(LayCloth(), (band,), (Placement("Zoë & Ida\x01/band", 1, 0.0, 0.0),)))
    titles = [title.text for title in ET.fromstring(drawn).iter("{http://www.w3.org/2000/svg}title")]
    assert "Neck<band>, Zoë & Ida 1" in titles
