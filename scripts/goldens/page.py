"""The page on which old and new golden drawings lie on each other; it asks for nothing outside itself."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

from scripts.goldens.apart import Apart, apart
from scripts.goldens.reading import DrawnPiece, pieces_in
from tapeline.geometry import Path

__all__ = ["Golden", "page"]

MARGIN_MM = 20.0
MOST_LINES = 60
"""Of the words that changed; more are counted."""
STYLE = """
body { font: 15px/1.5 system-ui, sans-serif; margin: 2rem auto; max-width: 75rem; padding: 0 1rem; color: #1c1c1c; }
svg { width: 100%; max-height: 80vh; background: #fafaf7; border: 1px solid #ccc; }
.old { fill: none; stroke: #b3261e; stroke-dasharray: 8 5; stroke-width: 1.6; }
.new { fill: none; stroke: #0b57a4; stroke-width: 1.6; }
.same { stroke: #777; }
.far { fill: none; stroke: #1c1c1c; stroke-width: 1.2; }
text { font: 14px system-ui, sans-serif; }
table { border-collapse: collapse; } th, td { text-align: left; padding: .15rem 1.2rem .15rem 0; }
td.mm { text-align: right; font-variant-numeric: tabular-nums; }
pre { background: #f3f3ef; padding: .6rem; overflow-x: auto; font-size: 13px; }
"""


@dataclass(frozen=True, slots=True)
class Golden:
    """One golden text, before and after; `None` where there was or is none."""

    name: str
    old: str | None
    new: str | None

    @property
    def changed(self) -> bool:
        """Whether anything in it did."""
        return self.old != self.new

    @property
    def pieces(self) -> list[tuple[str, DrawnPiece | None, DrawnPiece | None, Apart | None]]:
        """Every piece of either: its name, as it was, as it is, and how far both lie apart."""
        old, new = pieces_in(self.old or ""), pieces_in(self.new or "")
        found = []
        for name in dict.fromkeys((*old, *new)):
            was, now = old.get(name), new.get(name)
            found.append((name, was, now, apart(was, now) if was and now else None))
        return found

    @property
    def greatest_mm(self) -> float:
        """The farthest that any outline went."""
        return max((far.mm for *_, far in self.pieces if far), default=0.0)


def page(goldens: Sequence[Golden], against: str) -> str:
    """The whole page; `against` says what the old drawings are."""
    changed = [golden for golden in goldens if golden.changed]
    head = f"{len(changed)} of {len(goldens)} golden drawings differ from {against}" if changed else ""
    body = "\n".join(part for golden in changed for part in _section(golden))
    title = head or f"No golden drawing differs from {against}"
    return (
        '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
        f"<title>{escape(title)}</title>\n<style>{STYLE}</style>\n</head>\n<body>\n<h1>{escape(title)}</h1>\n"
        "<p>Old lines are broken and red, new ones whole and blue; a circle is where they lie farthest apart.</p>\n"
        f"{body}\n</body>\n</html>\n"
    )


def _section(golden: Golden) -> Iterator[str]:
    yield f'<section id="{escape(golden.name)}">\n<h2>{escape(golden.name.replace("_", " "))}</h2>'
    if golden.old is None or golden.new is None:
        yield f"<p>{'New' if golden.old is None else 'Gone'}.</p>"
    rows = [_row(*piece) for piece in golden.pieces]
    if rows:
        yield "<table><tr><th>piece</th><th>greatest distance</th></tr>" + "".join(rows) + "</table>"
        yield _drawing(golden)
    yield _words(golden)
    yield "</section>"


def _row(name: str, was: DrawnPiece | None, now: DrawnPiece | None, far: Apart | None) -> str:
    said = f"{far.mm:.2f} mm" if far and far.moved else "the same" if far else "new" if now else "gone"
    drawn = now or was
    title = drawn.title if drawn else name
    return f'<tr><td>{escape(title)}</td><td class="mm">{said}</td></tr>'


def _drawing(golden: Golden) -> str:
    """The pieces side by side, old under new."""
    x, height, parts = MARGIN_MM, 0.0, []
    for name, was, now, far in golden.pieces:
        there = [piece for piece in (was, now) if piece]
        lows, highs = zip(*(_box(piece.outline) for piece in there), strict=True)
        left, low = (min(corner[k] for corner in lows) for k in (0, 1))
        right, top = (max(corner[k] for corner in highs) for k in (0, 1))
        inside = []
        if was and not (far and not far.moved):
            inside.append(f'<path class="old" d="{was.outline.svg(2)}"/>')
        if now:
            same = " same" if far and not far.moved else ""
            inside.append(f'<path class="new{same}" d="{now.outline.svg(2)}"/>')
        if far and far.moved:
            inside.append(f'<path class="far" d="{Path.through(far.at, far.to).svg(2)}"/>')
            inside.append(f'<circle class="far" cx="{far.to.x:.2f}" cy="{far.to.y:.2f}" r="{far.mm + 8:.2f}"/>')
        move = f"matrix(1 0 0 -1 {x - left:.2f} {MARGIN_MM + top:.2f})"
        parts.append(f'<g transform="{move}">{"".join(inside)}</g>')
        words = name.replace("_", " ") + (f": {far.mm:.2f} mm" if far and far.moved else "")
        parts.append(f'<text x="{x:.0f}" y="{MARGIN_MM - 6:.0f}">{escape(words)}</text>')
        x += max(right - left, 8.0 * len(words)) + MARGIN_MM
        height = max(height, top - low)
    box = f"0 0 {x:.0f} {height + 2 * MARGIN_MM:.0f}"
    return f'<svg viewBox="{box}" role="img" aria-label="{escape(golden.name)}: old and new">{"".join(parts)}</svg>'


def _box(path: Path) -> tuple[tuple[float, float], tuple[float, float]]:
    places = path.sampled(0.5)
    (left, low), (right, top) = places.min(axis=0).tolist(), places.max(axis=0).tolist()
    return (left, low), (right, top)


def _words(golden: Golden) -> str:
    """What changed in the text, besides the lines of the drawing."""
    old, new = (_steps(text or "") for text in (golden.old, golden.new))
    lines = [
        line for line in difflib.unified_diff(old, new, n=0, lineterm="") if not line.startswith(("---", "+++", "@@"))
    ]
    if not lines:
        return "<p>Sizes, seams and words are as they were.</p>"
    more = f"\n... and {len(lines) - MOST_LINES} lines more" if len(lines) > MOST_LINES else ""
    shown = escape("\n".join(lines[:MOST_LINES]) + more)
    return (
        f"<details><summary>{len(lines)} lines of sizes, seams and words changed</summary><pre>{shown}</pre></details>"
    )


def _steps(text: str) -> list[str]:
    """A golden text without its pieces and points, which the drawing shows."""
    blocks = text.split("\n\n")
    return [line for block in blocks if not block.startswith(("PIECE", "POINTS")) for line in block.splitlines()]
