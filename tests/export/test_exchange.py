"""The exchange file read back: by a reader written from the convention, and by the audit of the library that wrote it.

Layers: ASTM D6673-10, read second hand. Labels of the text: from memory of the same.
"""

from __future__ import annotations

import io
from dataclasses import dataclass
from pathlib import Path

import pytest
from ezdxf.filemanagement import read
from shapely import LineString, Point
from shapely.geometry.base import BaseGeometry

from tapeline.docket import docket_from_text, read_docket
from tapeline.export import Exchanged, Release, exchange
from tapeline.finish import Finished
from tapeline.geometry import Path as Line
from tapeline.project import draft, finished
from tapeline.units import Unit
from tests.export.convention import Block, blocks

EXAMPLES = sorted((Path(__file__).resolve().parents[2] / "examples").glob("*.toml"))
WITHIN_MM = 0.05
INCH_MM = 25.4


@dataclass(frozen=True)
class Written:
    """A garment, and the blocks of its file by name."""

    garment: Finished
    blocks: dict[str, Block]


@pytest.fixture(
    scope="module",
    params=[
        pytest.param(path, id=path.stem, marks=[] if path.stem == "tee" else pytest.mark.slow) for path in EXAMPLES
    ],
)
def written(request: pytest.FixtureRequest) -> Written:
    """Every example, finished, written and read back."""
    garment = finished(draft(read_docket(request.param)))
    return Written(garment, blocks(exchange([garment]).data)[0])


@pytest.fixture(scope="module")
def tee() -> Finished:
    """The tee."""
    return finished(draft(read_docket(EXAMPLES[0].parent / "tee.toml")))


def shape(path: Line, *, closed: bool = False) -> BaseGeometry:
    """A path of the model as dense points."""
    points = [(p.x, p.y) for p in path.flattened(0.01)]
    return LineString([*points, points[0]] if closed else points)


def far(one: BaseGeometry, other: BaseGeometry) -> float:
    """How far two lines lie apart where they are furthest from each other."""
    return float(max(one.hausdorff_distance(other), other.hausdorff_distance(one)))


def test_every_outline_lies_on_its_cut_line(written: Written) -> None:
    """Layer 1 holds one closed chain for each piece, nowhere further from the cut line than asked."""
    assert len(written.blocks) == len(written.garment.pieces)
    for block, piece in zip(written.blocks.values(), written.garment.pieces, strict=True):
        ((closed, chain),) = block.chains["1"]
        assert closed
        assert far(LineString([*chain, chain[0]]), shape(piece.cut_line, closed=True)) < WITHIN_MM


def test_every_place_of_an_outline_is_a_corner_or_on_a_curve(written: Written) -> None:
    """Each end of a chord has a point on layer 2 or 3, and no other point is there."""
    for block in written.blocks.values():
        chains = [place for layer in ("1", "8", "14") for _, chain in block.chains.get(layer, []) for place in chain]
        assert set(chains) == {*block.points.get("2", []), *block.points.get("3", [])}


def test_every_notch_is_on_its_edge(written: Written) -> None:
    """Layer 4 holds a point for each tick, on the outline."""
    for block, piece in zip(written.blocks.values(), written.garment.pieces, strict=True):
        ticks = [line for tick in piece.ticks for line in tick.lines]
        points = block.points.get("4", [])
        assert len(points) == len(ticks)
        chain = block.chains["1"][0][1]
        outline = LineString([*chain, chain[0]])
        bare = {name for name, width in piece.allowances if width == 0}
        assert all(outline.distance(Point(p)) < WITHIN_MM for p in points) or bare


def test_sew_lines_grain_and_mirror_lines_are_those_of_the_piece(written: Written) -> None:
    """Layer 14 covers every edge that is sewn, 7 runs along the grain, 6 along the fold."""
    for block, piece in zip(written.blocks.values(), written.garment.pieces, strict=True):
        sewn = [edge.path for edge in piece.piece.edges if not edge.fold]
        length = sum(LineString([*chain, chain[0]] if closed else chain).length for closed, chain in block.chains["14"])
        assert length == pytest.approx(sum(path.length for path in sewn), abs=WITHIN_MM)
        ((start, end),) = block.lines["7"]
        grain = piece.piece.grain
        assert (*start, *end) == pytest.approx((grain.start.x, grain.start.y, grain.end.x, grain.end.y), abs=1e-5)
        folds = [edge for edge in piece.piece.edges if edge.fold]
        assert len(block.lines.get("6", [])) == len(folds)


def test_the_text_is_whole(tee: Finished) -> None:
    """Each block says its piece, size, quantity and cloth; the file says style and unit."""
    found, outside = blocks(exchange([tee]).data)
    assert {"Piece Name: Front", "Size: Marit", "Quantity: 1", "Material: shell"} <= set(
        found["FRONT_MARIT"].texts["1"]
    )
    assert "Material: rib" in found["NECKBAND_MARIT"].texts["1"]
    assert {"Style Name: tee", "Units: METRIC", "Sample Size: Marit"} <= set(outside.texts["1"])


def test_inches_are_inches(tee: Finished) -> None:
    """Every length in an inch file is the millimetre file's, divided by 25.4."""
    mm, _ = blocks(exchange([tee]).data)
    inch, outside = blocks(exchange([tee], Unit.INCH).data)
    for one, other in zip(mm.values(), inch.values(), strict=True):
        a, b = (LineString(block.chains["1"][0][1]) for block in (one, other))
        assert a.length == pytest.approx(b.length * INCH_MM, rel=1e-6)
    assert "Units: ENGLISH" in outside.texts["1"]


@pytest.mark.parametrize("release", Release)
def test_the_library_finds_nothing_to_mend(tee: Finished, release: Release) -> None:
    """The file passes the audit of the library, in both releases."""
    audit = read(io.StringIO(exchange([tee], release=release).data.decode())).audit()
    assert not audit.errors
    assert not audit.fixes


def test_blocks_lie_apart(tee: Finished) -> None:
    """On the sheet of the file no piece lies over another."""
    file = read(io.StringIO(exchange([tee]).data.decode()))
    found, _ = blocks(exchange([tee]).data)
    spans = []
    for insert in file.modelspace().query("INSERT"):
        xs = [x + insert.dxf.insert.x for x, _ in found[insert.dxf.name].chains["1"][0][1]]
        spans.append((min(xs), max(xs)))
    assert len(spans) == len(found)
    assert all(a[1] < b[0] for a, b in zip(sorted(spans), sorted(spans)[1:], strict=False))


def test_the_same_is_written_twice(tee: Finished) -> None:
    """No hour, no random mark."""
    assert exchange([tee]) == exchange([tee])


def named(name: str) -> Exchanged:
    """The tee, for a wearer of a name."""
    text = (EXAMPLES[0].parent / "tee.toml").read_text(encoding="utf-8").replace('"Marit"', f'"{name}"')
    return exchange([finished(draft(docket_from_text(text, "tee.toml")))])


def test_letters_beyond_ascii_are_written_plainly_and_said() -> None:
    """Names of blocks and texts are in 7-bit letters, and a note says which were replaced."""
    made = named("Zoë Łuczak")
    assert b"Size: Zoe Luczak" in made.data
    assert "BACK_ZOE_LUCZAK" in made.blocks
    (note,) = made.problems
    assert note.code == "letters-replaced"
    assert "ë" in note.says


def test_names_too_long_or_the_same_stay_apart() -> None:
    """A name keeps to 31 letters, and two pieces of a name get two."""
    made = named("Wilhelmina Margareta Johanna van den Bovenkamp")
    assert len(set(made.blocks)) == 4
    assert all(len(name) <= 31 for name in made.blocks)


def test_several_sizes_have_blocks_of_their_own(tee: Finished) -> None:
    """A block for each piece and size."""
    other = finished(draft(docket_from_text('wearer = { figure = "woman", size = "96" }\n', "m.toml")))
    made = exchange([tee, other])
    assert len(made.blocks) == len(tee.pieces) + len(other.pieces)
    assert "FRONT_MARIT" in made.blocks
    assert any(name.startswith("FRONT_SIZE_96") for name in made.blocks)
