"""The cutter's drawing, read back by a parser of its own: groups, colours, hairlines, and every line within 0.05 mm."""

from __future__ import annotations

from xml.etree import ElementTree as ET

import numpy as np
import pytest
from shapely import LineString, Polygon
from shapely.affinity import scale, translate
from shapely.geometry.base import BaseGeometry

from tapeline.docket import docket_from_text
from tapeline.export import cutter_drawings
from tapeline.finish.tools import USUAL_TOOLS, Lines, Tool
from tapeline.geometry import Path
from tapeline.problems import InputError
from tests.export.garments import tee
from tests.export.readback import points_of

WITHIN_MM = 0.05
SVG = "{http://www.w3.org/2000/svg}"
TOOLS = (
    Tool("knife", "#aa0000", (Lines.CUT,)),
    Tool("punch", "#00aa00", (Lines.NOTCH,)),
    Tool("pen", "#0000aa", (Lines.SEAM, Lines.WORDS)),
)


def groups(data: bytes) -> dict[str, ET.Element]:
    """Its groups by name; nothing in it may look different by a style sheet or a transform of lines."""
    root = ET.fromstring(data)
    assert root.find(f"{SVG}style") is None
    assert b"style=" not in data
    assert b"class=" not in data
    wide, high = (float(root.attrib[name].removesuffix("mm")) for name in ("width", "height"))
    assert [float(part) for part in root.attrib["viewBox"].split()] == [0, 0, wide, high]
    assert all("transform" not in path.attrib for path in root.iter(f"{SVG}path"))
    return {group.attrib["id"]: group for group in root.iter(f"{SVG}g")}


def lines(group: ET.Element) -> list[np.ndarray]:
    """Its paths as dense points, y up."""
    found = [points_of(path.attrib["d"].removesuffix(" Z")) for path in group.iter(f"{SVG}path")]
    return [points * (1, -1) for points in found]


def home(shape: BaseGeometry) -> BaseGeometry:
    """Moved so that its lower left corner is at the origin."""
    left, low, _, _ = shape.bounds
    return translate(shape, -left, -low)


def dense(path: Path) -> list[tuple[float, float]]:
    """A path of the model as points."""
    return [(p.x, p.y) for p in path.flattened(0.01)]


def test_every_piece_is_there_as_often_as_it_is_cut() -> None:
    """Each outline is that of its piece: as drafted, turned over, or unfolded about the fold."""
    garment = tee()
    drawings = {one.cloth: one for one in cutter_drawings(garment, TOOLS)}
    assert sum(one.pieces for one in drawings.values()) == sum(row.quantity for row in garment.cutting_list)
    cut = {cloth: iter(lines(groups(one.data)["knife"])) for cloth, one in drawings.items()}
    for piece in garment.pieces:
        model = Polygon(dense(piece.cut_line)).buffer(0)
        folds = [edge.path for edge in piece.piece.edges if edge.fold]
        if folds:
            at = folds[0].start
            across = abs(folds[0].start.x - folds[0].end.x) < abs(folds[0].start.y - folds[0].end.y)
            over = scale(model, *((-1, 1) if across else (1, -1)), origin=(at.x, at.y))
            model = model.union(over.buffer(1e-6)).buffer(0)
        for number in range(piece.piece.cut.quantity):
            found = home(Polygon(next(cut[piece.piece.cut.cloth])))
            turned = piece.piece.cut.mirrored and number % 2
            meant = home(scale(model, -1, 1) if turned else model)
            assert found.exterior.hausdorff_distance(meant.exterior) < WITHIN_MM


def test_each_tool_has_its_colour_and_its_lines() -> None:
    """Groups are named and coloured as the tools, nothing is filled, lines are hairlines, the knife comes last."""
    for drawing in cutter_drawings(tee(), TOOLS):
        found = groups(drawing.data)
        assert list(found) == ["punch", "pen", "knife"]
        for tool in TOOLS:
            looks = found[tool.name].attrib
            assert (looks["stroke"], looks["fill"]) == (tool.colour, "none")
            assert float(looks["stroke-width"]) < 0.03
        assert {text.text for text in found["pen"].iter(f"{SVG}text")}
        assert not list(found["knife"].iter(f"{SVG}text"))


def test_notches_begin_on_the_outline() -> None:
    """Every notch of every copy touches the outline of one."""
    for drawing in cutter_drawings(tee("long"), TOOLS):
        found = groups(drawing.data)
        edges = [Polygon(points).exterior for points in lines(found["knife"])]
        for tick in lines(found["punch"]):
            assert min(edge.distance(LineString(tick)) for edge in edges) < WITHIN_MM


def test_pieces_lie_apart_and_on_the_bed() -> None:
    """No outline touches another, and none reaches over the bed or out of the drawing."""
    for drawing in cutter_drawings(tee(), TOOLS, 900):
        shapes = [Polygon(points) for points in lines(groups(drawing.data)["knife"])]
        assert all(a.distance(b) > 5 for n, a in enumerate(shapes) for b in shapes[:n])
        assert max(shape.bounds[2] for shape in shapes) <= min(900, drawing.size_mm[0]) + 1e-3
        assert drawing.size_mm[1] == pytest.approx(-min(shape.bounds[1] for shape in shapes), abs=1e-3)


def test_words_keep_every_letter() -> None:
    """Names with accents are in the drawing as they are written."""
    data = b"".join(one.data for one in cutter_drawings(tee(wearer="Zoë Łuczak"), USUAL_TOOLS))
    assert "tee, Zoë Łuczak" in data.decode()


def test_what_no_tool_follows_is_told_with_the_caution() -> None:
    """A note names the lines left out; another tells of blades and lasers, and stands in the file too."""
    (shell, *_) = cutter_drawings(tee(), TOOLS)
    assert [problem.code for problem in shell.problems] == ["cutter-left-out", "cutter-safety"]
    assert "grain, mark" in shell.problems[0].says
    assert b"lasers" in shell.data


@pytest.mark.parametrize("bed", [0.0, -5.0, float("nan"), 200.0, 1e9])
def test_a_bed_that_is_none_is_refused(bed: float) -> None:
    """Too narrow for a piece, nothing, not a number: nothing is drawn."""
    with pytest.raises(InputError) as caught:
        cutter_drawings(tee(), TOOLS, bed)
    assert caught.value.problems[0].code == "cutter-bed"


@pytest.mark.parametrize(
    "tools",
    [
        'knife = "red"',
        'knife = { colour = "red", lines = ["cut"] }',
        'knife = { colour = "#ff0000" }',
        'knife = { colour = "#ff0000", lines = ["cutt"] }',
        '"two words" = { colour = "#ff0000", lines = ["cut"] }',
        'pen = { colour = "#ff0000", lines = ["mark"] }',
        'knife = { colour = "#ff0000", lines = ["cut"] }\npen = { colour = "#FF0000", lines = ["mark"] }',
        'knife = { colour = "#ff0000", lines = ["cut"] }\npen = { colour = "#0000ff", lines = ["cut"] }',
        "\n".join(f'k{n} = {{ colour = "#ff00{n:02}", lines = ["cut"] }}' for n in range(13)),
    ],
)
def test_tools_that_are_none_are_refused(tools: str) -> None:
    """Names, colours, kinds of lines, and what two would share: each is refused at its line of the docket."""
    with pytest.raises(InputError) as caught:
        docket_from_text(f'wearer = {{ figure = "woman", size = "88" }}\n[cutter.tools]\n{tools}\n')
    assert {problem.code for problem in caught.value.problems} == {"cutter-tool"}
    assert all(", line " in problem.where for problem in caught.value.problems)


def test_tools_come_from_the_docket() -> None:
    """A docket's own names and colours, in its order."""
    docket = docket_from_text(
        'wearer = { figure = "woman", size = "88" }\n'
        "[cutter.tools]\n"
        'pen = { colour = "#00FF00", lines = ["mark", "words"] }\n'
        'knife = { colour = "#ff0000", lines = ["cut", "notch"] }\n'
    )
    assert [(tool.name, tool.colour) for tool in docket.tools] == [("pen", "#00ff00"), ("knife", "#ff0000")]
    assert docket_from_text('wearer = { figure = "woman", size = "88" }').tools == USUAL_TOOLS
