"""The nest: sizes on each other, told apart by their lines, named beside them; in the drawing and the exchange file."""

from __future__ import annotations

import math
import xml.etree.ElementTree as ET

import numpy as np
import pytest

from tapeline.export import MOST_SIZES, Nest, nest
from tapeline.export.size_line import size_lines
from tapeline.geometry import Point, Vector
from tapeline.problems import InputError
from tapeline.project import SizeRun, nested_drawing, run_exchange
from tests.export.convention import blocks
from tests.export.readback import points_of
from tests.grade.runs import run_of

SVG = "{http://www.w3.org/2000/svg}"


def nested(run: SizeRun) -> Nest:
    """The nest of a run."""
    return nest([size.finished for size in run.sizes], run.labels, "all")


def test_no_two_sizes_have_the_same_line() -> None:
    """Without colour, as many as there are differ in their marks and gaps; ISO 128-2 names 15 kinds (from memory)."""
    lines = size_lines(MOST_SIZES)
    assert len({line.in_widths for line in lines}) == MOST_SIZES == 15
    assert sorted(line.number for line in lines) == list(range(1, 16))
    assert lines[(MOST_SIZES - 1) // 2].in_widths == ()


def test_more_sizes_than_lines_are_refused() -> None:
    """Sixteen sizes would have two that look alike: the nest is refused, and says what else there is."""
    run = run_of("84, 88")
    with pytest.raises(InputError) as refused:
        nest([run.sizes[0].finished] * 16, [str(n) for n in range(16)], "all")
    assert [problem.code for problem in refused.value.problems] == ["run-too-long"]
    assert "Nothing was written." in refused.value.problems[0].hint


def test_every_size_lies_as_it_was_drafted() -> None:
    """Each cut line in the nest is the size's own, slid so that the point where sizes meet is the origin."""
    run = run_of("84-92")
    for piece in nested(run).pieces:
        name = piece.whole.piece.name
        level = {"front": "chest_level", "back": "chest_level", "sleeve": "cap_foot", "neckband": "centre_front"}[name]
        for number, own in piece.sizes.items():
            drafted = run.sizes[number]
            away = drafted.drafted.garment.points[f"{name}.{level}"]
            cut = next(one for one in drafted.finished.pieces if one.piece.name == name).cut_line
            ring = points_of(cut.svg(6)) - (away.x, away.y)
            for stroke in own.strokes:
                if stroke.name == "cut line":
                    for place in stroke.path.flattened(1.0):
                        assert np.hypot(*(ring - (place.x, place.y)).T).min() < 0.5
                        assert abs(cut.distance_to(place + (away - Point(0.0, 0.0)))) < 0.05


def test_each_name_stands_beside_its_own_line() -> None:
    """The middle of a size's name is nearer to that size's cut line than to any other's."""
    run = run_of("84-104")
    tagged = 0
    for piece in nested(run).pieces:
        lines = {
            number: [stroke.path for stroke in own.strokes if stroke.name == "cut line"]
            for number, own in piece.sizes.items()
        }
        for number, own in piece.sizes.items():
            for tag in own.tags:
                tagged += 1
                # Figures are about 0.72 of the size of their letters high.
                left, right, *_ = tag.outline()
                up = Vector(-math.sin(tag.angle), math.cos(tag.angle)) * (0.36 * tag.size_mm)
                middle = left.toward(right, 0.5) + up
                near = {n: min(path.distance_to(middle) for path in paths) for n, paths in lines.items()}
                assert min(near, key=near.__getitem__) == number
                assert tag.text == run.labels[number]
    # Back, front, sleeve and neckband have at least one row each.
    assert tagged >= 4 * len(run.labels)


def test_no_corner_falls_into_a_gap() -> None:
    """ISO 128 lets dashed lines meet at corners: at each corner of a cut line both ends are drawn unbroken."""
    run = run_of("84-92")
    front = next(piece for piece in nested(run).pieces if piece.whole.piece.name == "front")
    for own in front.sizes.values():
        assert len(own.corners) >= 6
        assert all(5.0 < corner.length <= 6.1 or 2.9 < corner.length < 3.1 for corner in own.corners)


def test_the_drawing_has_a_group_for_each_size() -> None:
    """In the SVG each size is a group with every piece in it, dashed as the legend says; words are outside them."""
    run = run_of("84-92")
    root = ET.fromstring(nested_drawing(run))
    groups = [group for group in root.findall(f"{SVG}g") if group.get("data-size")]
    assert [group.get("data-size") for group in groups] == ["84", "88", "92"]
    pieces = [piece.piece.name for piece in run.sizes[0].finished.pieces]
    for group in groups:
        assert [inner.get("data-piece") for inner in group.findall(f"{SVG}g")] == pieces
        assert "Front" not in {text.text for text in group.iter(f"{SVG}text")}
    style = root.findtext(f"{SVG}style") or ""
    assert "#size-1 .cut-line { stroke-width: 0.5; stroke-dasharray: 6 1.5 }" in style
    assert "#size-2 .cut-line { stroke-width: 0.5 }" in style


def test_the_exchange_file_has_a_block_for_each_piece_of_each_size() -> None:
    """Read by the layer convention alone: every size and piece, outlines within 0.05 mm of the size's own cut line."""
    run = run_of("84-92")
    found, _ = blocks(run_exchange(run).data)
    assert len(found) == sum(len(size.finished.pieces) for size in run.sizes)
    for size in run.sizes:
        for piece in size.finished.pieces:
            block = found[f"{piece.piece.title.upper()}_SIZE_{size.label}"]
            assert f"Size: Size {size.label}" in block.texts["1"]
            ((closed, outline),) = block.chains["1"]
            assert closed
            assert max(piece.cut_line.distance_to(Point(*place)) for place in outline[::25]) < 0.05
