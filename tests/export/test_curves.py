"""The curve file, read back by the library's own curve mathematics."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from ezdxf.entities.line import Line as Straight
from ezdxf.entities.spline import Spline
from ezdxf.filemanagement import read
from shapely import LineString, MultiLineString

from tapeline.docket import read_docket
from tapeline.export import curves
from tapeline.project import draft, finished
from tapeline.units import Unit

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
EXACT_MM = 1e-3


@pytest.mark.parametrize("name", ["tee", "simple-shirt", "square-neck-top"])
def test_curves_are_the_curves_drafted(name: str) -> None:
    """The cut lines of all pieces have the length they were drafted with, and lie where they were."""
    garment = finished(draft(read_docket(EXAMPLES / f"{name}.toml")))
    file = read(io.StringIO(curves(garment).decode()))
    assert not file.audit().errors
    drawn = []
    for entity in file.modelspace().query('*[layer=="CUT-LINE" | layer=="FOLD-LINE"]'):
        if isinstance(entity, Straight):
            drawn.append(LineString([(p.x, p.y) for p in (entity.dxf.start, entity.dxf.end)]))
        else:
            assert isinstance(entity, Spline)
            drawn.append(LineString([(p.x, p.y) for p in entity.flattening(1e-4)]))
    asked = sum(piece.cut_line.length for piece in garment.pieces)
    assert MultiLineString(drawn).length == pytest.approx(asked, abs=EXACT_MM * len(garment.pieces))


def test_an_inch_file_says_so() -> None:
    """The unit stands in the file, and lengths are in it."""
    garment = finished(draft(read_docket(EXAMPLES / "tee.toml")))
    mm, inch = (read(io.StringIO(curves(garment, unit).decode())) for unit in (Unit.CM, Unit.INCH))
    assert (mm.header["$INSUNITS"], inch.header["$INSUNITS"]) == (4, 1)
    grain = [file.modelspace().query('LINE[layer=="GRAIN-LINE"]')[0] for file in (mm, inch)]
    lengths = [line.dxf.start.distance(line.dxf.end) for line in grain]
    assert lengths[0] == pytest.approx(lengths[1] * 25.4)


def test_the_same_is_written_twice() -> None:
    """No hour, no random mark."""
    garment = finished(draft(read_docket(EXAMPLES / "tee.toml")))
    assert curves(garment) == curves(garment)
