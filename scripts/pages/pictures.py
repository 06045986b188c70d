"""docs/images: pictures that the tool draws of an invented wearer's garments."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from html import escape
from pathlib import Path
from textwrap import wrap

from scripts.pages.corrections import corrections
from scripts.pages.drawn import INK, MARK, line, svg
from scripts.pages.styles import EXAMPLES
from tapeline.docket import Docket, docket_from_text, read_docket
from tapeline.geometry import Point, Rigid
from tapeline.pattern import Garment, Step
from tapeline.project import draft, draw_garment, drawing
from tapeline.sheets.construction import sections

__all__ = ["pictures"]

ROOT = Path(__file__).resolve().parents[2]
GAP = 40.0
NAME_MM, LETTER = 22.0, 0.72
"""Size of a piece's name, and how wide a bold letter is in sizes: rather too much."""
SMALL_MM = 14.0
"""A name that would be smaller goes on several lines."""
ROOMY_MM = 150.0
"""Across a lower piece a name would lie on its lines."""
LARGE = """
text { display: none }
.title { display: inline; text-anchor: middle }
.seam-line, .grain-line, .mark-line, .notch { stroke-width: 1 }
.cut-line, .fold-line { stroke-width: 2 }
"""
"""For a drawing that is shown small: names large, other words left out."""
QUIET, CLOTH = "#8a8f96", "#f6f4ef"


def pictures() -> dict[str, str]:
    """Every picture, by its file's name."""
    tee = read_docket(ROOT / "examples" / "tee.toml")
    bare = docket_from_text(_bare("88"), "block.toml")
    return {
        **{f"style-{path.stem}.svg": _small(drawing(draft(read_docket(path)))) for path in EXAMPLES},
        "pieces.svg": _small(drawing(draft(tee))),
        "construction.svg": _construction(draw_garment(bare)[0]),
        **corrections(),
        "frames.svg": _frames(docket_from_text(_bare("110"), "block.toml")),
    }


def _small(drawn: str) -> str:
    """The drawing, made to be shown small: as wide as its place, names large."""
    drawn = re.sub(r' width="[0-9.]+mm" height="[0-9.]+mm"', "", drawn, count=1)
    drawn = drawn.replace("</style>", f"{LARGE}</style>", 1)
    return re.sub(r'(?s)<g id="piece-.*?</g>', lambda group: _named(group[0]), drawn)


def _named(piece: str) -> str:
    """A piece with its name where it lies now, or below it where that is too narrow."""
    title = re.search(
        r'<text class="title" x="([0-9.]+)" y="([0-9.]+)" font-size="([0-9.]+)"[^>]*>([^<]*)</text>', piece
    )
    cloth = re.search(r'class="cloth"[^>]* d="([^"]*)"', piece)
    if title is None or cloth is None:
        raise ValueError("a piece is drawn without its name or its cloth")
    places = [float(number) for number in re.findall(r"-?[0-9.]+", cloth[1])]
    xs, ys = places[::2], places[1::2]
    width, name = max(xs) - min(xs), title[4]
    fits = len(name) * NAME_MM * LETTER < width and max(ys) - min(ys) > ROOMY_MM
    # Where it lies now there is room round its middle; below the piece it stands under the piece's own.
    middle = float(title[1]) + len(name) * float(title[3]) * LETTER / 2 if fits else min(xs) + width / 2
    lines = [name] if fits or len(name) * SMALL_MM * LETTER < width + GAP else name.split()
    size = NAME_MM if fits else min(NAME_MM, (width + GAP) / (max(map(len, lines)) * LETTER))
    top = float(title[2]) if fits else max(ys) + GAP / 2
    spans = "".join(f'<tspan x="{middle:.1f}" dy="{size * bool(n):.1f}">{line}</tspan>' for n, line in enumerate(lines))
    return piece.replace(title[0], f'<text class="title" y="{top:.1f}" font-size="{size:.1f}">{spans}</text>', 1)


def _bare(size: str) -> str:
    return f'wearer = {{ figure = "woman", size = "{size}" }}\ngarment = {{ style = "block" }}\n'


def _construction(garment: Garment) -> str:
    """The back, a panel for each section: what is new strong, what was there before quiet."""
    states: list[tuple[str, list[Step]]] = []
    for title, steps in sections(garment.steps):
        drawn = [step for step in steps if step.sheet == "back" and (step.point is not None or step.path is not None)]
        if drawn and states and "front" in title:
            # The centre back is closed when the back becomes a piece, which is when the front is drawn as well.
            states[-1][1].extend(drawn)
        elif drawn:
            states.append((title, drawn))
    every = [place for _, steps in states for step in steps for place in _places(step)]
    left, right = min(p.x for p in every), max(p.x for p in every)
    low, high = min(p.y for p in every), max(p.y for p in every)
    wide, tall, top = right - left + 2 * GAP, high - low + 2 * GAP, 80.0
    lines = []
    for number, (title, steps) in enumerate(states):
        flip = Rigid(1, 0, 0, -1, number * wide + GAP - left, top + GAP + high)
        for row, words in enumerate(wrap(f"{number + 1}. {title}", 24)):
            lines.append(
                f'<text x="{number * wide + GAP:.1f}" y="{40 + 34 * row}" font-size="26">{escape(words)}</text>'
            )
        for _, before in states[:number]:
            lines += _marks(before, flip, QUIET, 1.6)
        lines += _marks(steps, flip, MARK, 2.6)
    says = "The back of the dartless block in the order in which it is drawn: " + "; ".join(t for t, _ in states)
    return svg(len(states) * wide, tall + top, says, lines)


def _marks(steps: Iterable[Step], flip: Rigid, colour: str, wide: float) -> Iterable[str]:
    for step in steps:
        if step.path is not None:
            yield line(step.path.moved(flip), colour, wide)
        if step.point is not None:
            place = flip.point(step.point)
            yield f'<circle cx="{place.x:.2f}" cy="{place.y:.2f}" r="{wide * 2:.1f}" fill="{colour}"/>'


def _frames(docket: Docket) -> str:
    """Back and front of one standard wearer by both frames, one over the other."""
    survey, rule = (draw_garment(replace(docket, surveyed=surveyed))[0] for surveyed in (True, False))
    lines, x = [], GAP
    tops = [place.y for g in (survey, rule) for name in ("back", "front") for place in g.piece(name).seam_line.knots]
    for name in ("back", "front"):
        flip = Rigid(1, 0, 0, -1, x, max(tops) + GAP + 60)
        lines.append(f'<path d="{survey.piece(name).seam_line.moved(flip).svg()}" fill="{CLOTH}"/>')
        lines.append(line(survey.piece(name).seam_line.moved(flip), INK, 2.4))
        lines.append(line(rule.piece(name).seam_line.moved(flip), MARK, 2.4, ' stroke-dasharray="14 8"'))
        x += max(place.x for g in (survey, rule) for place in g.piece(name).seam_line.knots) + 2 * GAP
    lines.append(f'<text x="{GAP}" y="36" font-size="26">unbroken: the survey; dashed: the rule of proportion</text>')
    says = f"Back and front for {docket.wearer.name}, by the survey and by the rule of proportion, laid over each other"
    return svg(x, max(tops) - min(tops) + 2 * GAP + 60, says, lines)


def _places(step: Step) -> list[Point]:
    return [*([step.point] if step.point is not None else []), *(step.path.knots if step.path is not None else [])]
