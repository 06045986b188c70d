"""Files of other senders: read as ezdxf draws them, and whatever is not understood is named.

The unit codes and the meaning of text escapes are held to ezdxf's own tables.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import pytest
from ezdxf import units
from ezdxf.entities.arc import Arc
from ezdxf.entities.dxfgfx import DXFGraphic
from ezdxf.entities.ellipse import Ellipse
from ezdxf.entities.insert import Insert
from ezdxf.entities.line import Line
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.entities.polyline import Polyline
from ezdxf.entities.spline import Spline
from ezdxf.enums import InsertUnits
from shapely import LinearRing, MultiLineString, Polygon

from tapeline.geometry import area
from tapeline.problems import InputError, Severity
from tapeline.received import Received, received
from tapeline.received.scale import _COUNTED
from tests.received.theirs import SQUARE, WORDS, box, data, file, typed

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts.blocklayout import BlockLayout

RELEASES = ("R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018")


def codes(found: Received) -> set[str]:
    """The codes of its problems."""
    return {problem.code for problem in found.problems}


@pytest.mark.parametrize("release", RELEASES)
def test_every_release_is_read(release: str) -> None:
    """From R12 to the current one a square piece is the same square piece."""
    found = received(data(file(release)), "theirs.dxf")
    (piece,) = found.pieces
    assert (piece.name, piece.size, piece.quantity, piece.material) == ("FRONT", "38", 2, "SHELL")
    assert piece.area_mm2 == pytest.approx(400 * 600)
    assert found.problems == ()


@pytest.mark.parametrize(("word", "mm"), [("METRIC", 1.0), ("ENGLISH", 25.4), ("metric", 1.0)])
def test_text_says_the_unit(word: str, mm: float) -> None:
    """`Units:` decides, in any case of letters; the inch is 25.4 mm by definition."""
    (piece,) = received(data(file(unit=word)), "theirs.dxf").pieces
    assert piece.size_mm == pytest.approx((400 * mm, 600 * mm))


@pytest.mark.parametrize("code", sorted(_COUNTED))
def test_header_units_are_those_of_the_format(code: int) -> None:
    """Without text the header's unit is taken, and it is as large as ezdxf says."""
    made = file("R2000", unit=None)
    made.header["$INSUNITS"] = code
    (piece,) = received(data(made), "theirs.dxf").pieces
    factor = units.conversion_factor(InsertUnits(code), InsertUnits.Millimeters)
    assert piece.size_mm == pytest.approx((400 * factor, 600 * factor))


def test_a_unit_that_is_missing_or_contradicted_is_told() -> None:
    """Millimetres are taken, and the doubt says how large the piece then is; --unit ends the doubt."""
    found = received(data(file(unit=None)), "theirs.dxf")
    (doubt,) = found.problems
    assert doubt.code == "received-unit"
    assert "40.0 x 60.0 cm" in doubt.says
    made = file("R2000", unit="METRIC")
    made.header["$INSUNITS"] = 1
    assert codes(received(data(made), "theirs.dxf")) == {"received-unit"}
    tiny = received(data(file(unit="METRIC", draw=lambda _, b: _square(b, 0.05))), "t.dxf")
    assert "received-unit" in codes(tiny)


def _square(block: BlockLayout, scale: float) -> None:
    block.add_polyline2d([(x * scale, y * scale) for x, y in SQUARE], close=True, dxfattribs={"layer": "1"})


def _bulges(_: Drawing, block: BlockLayout) -> None:
    places = [(0, 0, 0.3), (400, 0, -0.5), (400, 600, 1.0), (0, 600, 0.0)]
    block.add_lwpolyline(places, format="xyb", close=True, dxfattribs={"layer": "1"})


def _old_bulges(_: Drawing, block: BlockLayout) -> None:
    places = [(0, 0, 0.3), (400, 0, -0.5), (400, 600, 1.0), (0, 600, 0.0)]
    block.add_polyline2d(places, format="xyb", close=True, dxfattribs={"layer": "01"})


def _from_behind(_: Drawing, block: BlockLayout) -> None:
    places = [(0, 0, 0.3), (-400, 0, -0.5), (-400, 600, 0.2), (0, 600, 0.0)]
    looks = {"layer": "1", "extrusion": (0, 0, -1)}
    block.add_lwpolyline(places, format="xyb", close=True, dxfattribs=looks)


def _spline(_: Drawing, block: BlockLayout) -> None:
    places = [(0, 0, 0), (500, -100, 0), (600, 700, 0), (200, 500, 0), (-100, 650, 0), (0, 0, 0)]
    block.add_open_spline(places, degree=3, dxfattribs={"layer": "1"})


def _weighted(_: Drawing, block: BlockLayout) -> None:
    places = [(0, 0, 0), (500, -100, 0), (600, 700, 0), (0, 700, 0), (0, 0, 0)]
    block.add_rational_spline(places, weights=[1, 3, 0.5, 2, 1], degree=3, dxfattribs={"layer": "1"})


def _in_parts(_: Drawing, block: BlockLayout) -> None:
    looks = {"layer": "1"}
    block.add_line((0, 0), (400, 0), dxfattribs=looks)
    block.add_arc((400, 100), 100, 270, 360, dxfattribs=looks)
    block.add_ellipse((250, 100), (250, 0), 0.8, 0, math.pi / 2, dxfattribs=looks)
    block.add_line((0, 0), (250, 300), dxfattribs=looks)  # the other way round


@pytest.mark.parametrize("draw", [_bulges, _old_bulges, _from_behind, _spline, _weighted, _in_parts])
def test_curves_are_those_that_the_library_draws(draw: object) -> None:
    """Bulges, mirrored planes, splines, arcs and ellipses lie within 0.05 mm of ezdxf's own reading of them."""
    assert callable(draw)
    made = file("R2000", draw)
    found = received(data(made), "theirs.dxf")
    (piece,) = found.pieces
    block = made.blocks.get("FRONT_38")
    flat = [part for entity in block if entity.dxftype() != "TEXT" for part in flattened(entity)]
    ours = LinearRing([(p.x, p.y) for p in piece.outline.knots])
    assert ours.hausdorff_distance(MultiLineString(flat)) < 0.05
    assert found.not_understood == ()


def flattened(entity: DXFGraphic) -> list[list[tuple[float, float]]]:
    """The lines of a thing as chords very near to it, as ezdxf finds them."""
    if isinstance(entity, (LWPolyline, Polyline)):
        return [line for part in entity.virtual_entities() for line in flattened(part)]
    if isinstance(entity, Line):
        return [[(p.x, p.y) for p in (entity.dxf.start, entity.dxf.end)]]
    assert isinstance(entity, (Arc, Ellipse, Spline))
    return [[(p.x, p.y) for p in entity.flattening(1e-3)]]


def test_blocks_in_one_another_are_laid_out() -> None:
    """A notch symbol, turned and scaled, lies where ezdxf puts it; on layer 0 it takes the layer it is put on."""

    def draw(made: Drawing, block: BlockLayout) -> None:
        sign = made.blocks.new("SIGN", base_point=(5, 5))
        sign.add_point((5, 15), dxfattribs={"layer": "0"})
        _square(block, 1)
        block.add_blockref("SIGN", (400, 300), dxfattribs={"layer": "4", "rotation": 30, "xscale": 2, "yscale": 0.5})

    made = file("R2000", draw)
    (piece,) = received(data(made), "theirs.dxf").pieces
    (insert,) = made.blocks.get("FRONT_38").query("INSERT")
    assert isinstance(insert, Insert)
    (spot,) = insert.virtual_entities()
    (notch,) = piece.notches
    assert (notch.at.x, notch.at.y) == pytest.approx((spot.dxf.location.x, spot.dxf.location.y), abs=1e-6)
    assert notch.kind == "V or slit"


def test_pieces_on_one_sheet_without_blocks_are_told_apart() -> None:
    """What lies inside an outline is its own; what lies outside all of them is named."""
    lines = ("LINE 8 7 10 50 20 10 11 50 21 90", "LINE 8 7 10 250 20 10 11 250 21 90", "POINT 8 13 10 700 20 700")
    found = received(typed(box(0, 0, 100), box(200, 0, 100), box(20, 20, 5), *lines), "sheet.dxf")
    assert [piece.grain is not None for piece in found.pieces] == [True, True]
    assert {(one.what, one.layer) for one in found.not_understood} == {("closed line", "1"), ("point", "13")}


def test_what_is_not_understood_is_counted_and_named() -> None:
    """Kinds, layers and places: a circle on no layer of the convention, a hatch, a grade rule, a second grain line."""

    def draw(_: Drawing, block: BlockLayout) -> None:
        _square(block, 1)
        for x in (100, 200, 300):
            block.add_circle((x, 100), 10, dxfattribs={"layer": "FRILLS"})
        block.add_solid([(0, 0), (1, 0), (1, 1)], dxfattribs={"layer": "8"})
        block.add_line((200, 100), (200, 500), dxfattribs={"layer": "7"})
        block.add_line((200, 100), (210, 110), dxfattribs={"layer": "7"})
        block.add_text("# 12", dxfattribs={"layer": "2"})
        block.add_line((0, 0), (9, 9), dxfattribs={"layer": "85"})

    found = received(data(file("R2000", draw, words=(*WORDS, "Wibble: 3"))), "theirs.dxf")
    told = {(one.what, one.layer): one.count for one in found.not_understood}
    assert told == {
        ("line", "FRILLS"): 3,
        ("SOLID", "8"): 1,
        ("line", "7"): 1,
        ("grade rule number", "2"): 1,
        ("line", "85"): 1,
        ("text", "1"): 1,
    }
    (doubt,) = found.problems
    assert (doubt.code, doubt.severity) == ("received-not-understood", Severity.DOUBT)
    assert "8 things" in doubt.says
    assert "FRILLS" in doubt.says


@pytest.mark.parametrize(
    ("release", "page", "raw", "read"),
    [
        ("AC1009", "ANSI_1252", "Größe".encode("cp1252"), "Größe"),
        ("AC1015", "ANSI_1251", "Спинка".encode("cp1251"), "Спинка"),
        ("AC1032", "ANSI_1252", "Œuvre á".encode(), "Œuvre á"),
        ("AC1009", "", rb"R\U+00FCcken", "Rücken"),
        ("AC1009", "NONSENSE", "Größe".encode(), "Größe"),
    ],
)
def test_letters_of_any_encoding_survive(release: str, page: str, raw: bytes, read: str) -> None:
    """Code pages, UTF-8 and escapes: the name of a piece is read as it was meant."""
    header = f"  0\nSECTION\n  2\nHEADER\n  9\n$ACADVER\n  1\n{release}\n  9\n$DWGCODEPAGE\n  3\n{page}\n  0\nENDSEC\n"
    made = typed(box(0, 0, 300), "TEXT 8 1 10 5 20 5 1 Piece_Name", header=header)
    (piece,) = received(made.replace(b"Piece_Name", b"Piece Name: " + raw), "theirs.dxf").pieces
    assert piece.name == read


def test_letters_that_cannot_be_read_are_told() -> None:
    """A byte that no encoding of the file has becomes a sign, with a note."""
    header = "  0\nSECTION\n  2\nHEADER\n  9\n$ACADVER\n  1\nAC1032\n  0\nENDSEC\n"
    made = typed(box(0, 0, 300), "TEXT 8 1 10 5 20 5 1 Piece_Name", header=header)
    assert "received-letters" in codes(received(made.replace(b"Piece_Name", b"Piece Name: Gr\xf6"), "theirs.dxf"))


@pytest.mark.parametrize(
    ("entities", "code"),
    [
        ((box(0, 0, 300), "LWPOLYLINE 8 1 70 0 10 500 20 0 10 800 20 0 10 800 20 300"), "received-open"),
        (("LWPOLYLINE 8 1 70 1 10 0 20 0 10 300 20 300 10 300 20 0 10 0 20 300",), "received-crosses"),
        ((box(0, 0, 300), "LINE 8 6 10 100 20 10 11 100 21 200"), "received-fold"),
        ((box(0, 0, 300), "POINT 8 4 10 150 20 150"), "received-notch"),
        ((box(0, 0, 300), "TEXT 8 1 10 9 20 9 1 Quantity:some"), "received-quantity"),
        ((box(0, 0, 300), box(500, 0, 300)), "received-size"),
        ((box(0, 0, 300), "TEXT 8 1 10 9 20 9 1 Size:38"), "received-name"),
        ((box(0, 0, 300),), "received-grain"),
    ],
)
def test_what_is_wrong_with_a_piece_is_told(entities: tuple[str, ...], code: str) -> None:
    """Each fault of a piece has its own code; nothing is mended by guess."""
    assert code in codes(received(typed(*entities), "theirs.dxf"))


def test_an_open_outline_is_no_piece_and_nearly_closed_is_closed() -> None:
    """A gap of a pencil line is a joint; one of a millimetre is an error that says where and how wide."""
    places = "10 0 20 0 10 300 20 0 10 300 20 300 10 0 20 300"
    (piece,) = received(typed(f"LWPOLYLINE 8 1 70 0 {places} 10 0 20 0.05"), "theirs.dxf").pieces
    assert abs(area(piece.outline)) == pytest.approx(300 * 300, rel=1e-3)
    with pytest.raises(InputError) as caught:
        received(typed(f"LWPOLYLINE 8 1 70 0 {places} 10 0 20 1"), "theirs.dxf")
    assert "open by 1.0 mm" in str(caught.value)


def test_a_fold_makes_a_whole_piece_of_half_a_one() -> None:
    """Unfolded about its mirror line a half is twice as wide and as high as before."""
    (piece,) = received(typed(box(0, 0, 300), "LINE 8 6 10 300 20 0 11 300 21 300"), "theirs.dxf").pieces
    whole = Polygon([(p.x, p.y) for p in piece.whole.knots])
    assert whole.bounds == pytest.approx((0, 0, 600, 300))
    assert whole.area == pytest.approx(600 * 300)


def test_pieces_put_down_scaled_are_told() -> None:
    """A block put down at another size is taken as drawn, and a doubt says so."""
    made = file("R2000")
    made.modelspace().add_blockref("FRONT_38", (0, 0), dxfattribs={"xscale": 2, "yscale": 2})
    found = received(data(made), "theirs.dxf")
    assert "received-scaled" in codes(found)
    assert found.pieces[0].size_mm == pytest.approx((400, 600))


def test_another_layer_can_be_named() -> None:
    """A drawing that does not keep to the convention is read when its cut lines' layer is named."""
    made = typed(box(0, 0, 300, "CUT"))
    with pytest.raises(InputError) as caught:
        received(made, "drawing.dxf")
    assert "its lines lie on CUT" in str(caught.value)
    assert len(received(made, "drawing.dxf", outline="CUT").pieces) == 1
