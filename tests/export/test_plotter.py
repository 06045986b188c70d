"""The plotter file, read back by a small interpreter of HP-GL (its words: from memory of the HP-GL/2 reference)."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

import pytest
from shapely import LineString, MultiLineString

from tapeline.docket import read_docket
from tapeline.export import Plot, paper, plotted
from tapeline.finish import Finished
from tapeline.problems import InputError
from tapeline.project import draft, finished
from tests.export.garments import tee

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
WITHIN_MM = 0.05
MOST_16_BITS = 32767
FRAME_MM = 1600.0


@dataclass
class Plotted:
    """What a plotter has drawn, in units, and the words it was given."""

    lines: dict[int, list[list[tuple[int, int]]]] = field(default_factory=dict)
    words: list[str] = field(default_factory=list)


def interpreted(data: bytes, more: tuple[str, ...] = ()) -> Plotted:
    """Follow every command; `more` are those that only say how the plot is to look."""
    text, done, pen, at, down = data.decode("ascii"), Plotted(), 0, (0, 0), False
    while text:
        command, text = text[:2], text[2:]
        if command == "LB":
            words, _, text = text.partition("\x03")
            done.words.append(words)
            continue
        if command == "DT":
            text = text[1:].removeprefix(";")
            continue
        arguments, _, text = text.partition(";")
        if command == "SP":
            pen = int(arguments)
        elif command in ("PU", "PD"):
            down = command == "PD"
            numbers = [int(n) for n in arguments.split(",")]
            places = list(zip(numbers[::2], numbers[1::2], strict=True))
            if down:
                done.lines.setdefault(pen, []).append([at, *places])
            at = places[-1]
        else:
            assert command in ("IN", "SI", "DI", *more), command
    assert not down or text == ""
    return done


def asked(garment: Finished, plot: Plot) -> MultiLineString:
    """Cut lines of the model where they lie on the roll."""
    width = plot.layout.size_mm[0]
    lines = []
    for placed in plot.layout.placements:
        points = placed.piece.cut_line.moved(placed.move).flattened(0.001)
        lines.append(LineString([(p.y, width - p.x) for p in [*points, points[0]]]))
    assert len(lines) == len(garment.pieces)
    return MultiLineString(lines)


def drawn(plot: Plot, *, narrow: bool) -> MultiLineString:
    """What the plotter drew with both pens, in mm along and across the roll."""
    width = plot.layout.size_mm[0]
    lines = []
    for number, frame in enumerate(plot.frames):
        x, y = ((number + 0.5) * FRAME_MM, width / 2) if narrow else (0.0, 0.0)
        for chains in interpreted(frame).lines.values():
            lines += [LineString([(a / 40 + x, b / 40 + y) for a, b in chain]) for chain in chains]
    return MultiLineString(lines)


@pytest.mark.parametrize("narrow", [False, True])
@pytest.mark.parametrize("name", ["tee", "t-shirt-dress", "simple-shirt"])
def test_what_is_drawn_is_what_was_drafted(name: str, *, narrow: bool) -> None:
    """Every place of every outline has ink nearby, whole or in frames."""
    garment = finished(draft(read_docket(EXAMPLES / f"{name}.toml")))
    plot = plotted(garment, paper("roll 914 mm"), narrow=narrow)
    ink, model = drawn(plot, narrow=narrow), asked(garment, plot)
    assert model.difference(ink.buffer(WITHIN_MM)).length < WITHIN_MM


def test_narrow_numbers_hold_in_16_bits() -> None:
    """No number of a narrow file is too large, on the widest roll and the longest garment."""
    garment = finished(draft(read_docket(EXAMPLES / "t-shirt-dress.toml")))
    plot = plotted(garment, paper("roll 1067 mm"), narrow=True)
    for frame in plot.frames:
        done = interpreted(frame)
        for chains in done.lines.values():
            assert max(abs(n) for chain in chains for place in chain for n in place) <= MOST_16_BITS


def test_a_long_plot_is_cut_into_frames() -> None:
    """On a narrow roll the pieces lie one behind the other, over more than one frame, and no words are lost."""
    garment = finished(draft(read_docket(EXAMPLES / "t-shirt-dress.toml")))
    whole, parts = (plotted(garment, paper("roll 500 mm"), narrow=narrow) for narrow in (False, True))
    assert len(whole.frames) == 1
    assert len(parts.frames) > 1
    said = [word for frame in parts.frames for word in interpreted(frame).words]
    assert sorted(said) == sorted(interpreted(whole.frames[0]).words)


def test_the_words_of_every_piece_are_there() -> None:
    """Titles are written with the pen that draws."""
    garment = finished(draft(read_docket(EXAMPLES / "tee.toml")))
    words = " ".join(interpreted(plotted(garment, paper("roll 914 mm")).frames[0]).words)
    assert all(piece.piece.title in words for piece in garment.pieces)


def test_a_sheet_is_no_roll() -> None:
    """A plotter is not given sheets of A4."""
    garment = finished(draft(read_docket(EXAMPLES / "tee.toml")))
    with pytest.raises(InputError, match="is a sheet"):
        plotted(garment, paper("A4"))


def test_hpgl2_draws_the_same_and_says_its_size() -> None:
    """Entered and left as the printer's language asks; the lines are those of HP-GL; the size holds all of them."""
    roll = paper("roll 914 mm")
    (plain,), (second,) = plotted(tee(), roll).frames, plotted(tee(), roll, second=True).frames
    assert second.startswith(b"\x1bE\x1b%0BIN;PS")
    assert second.endswith(b"SP0;PG;\x1b%0A\x1bE")
    inner = second.removeprefix(b"\x1bE\x1b%0B").removesuffix(b"\x1b%0A\x1bE")
    found = interpreted(inner, ("PS", "NP", "PW", "PG"))
    assert found == interpreted(plain)
    length, width = map(int, inner.partition(b"PS")[2].partition(b";")[0].split(b","))
    places = [place for lines in found.lines.values() for line in lines for place in line]
    assert max(x for x, _ in places) <= length
    assert max(y for _, y in places) <= width
