"""A garment as text: every number to a hundredth of a millimetre, sorted, without dates."""

from __future__ import annotations

from collections.abc import Iterator

from tapeline.geometry import Path, Point
from tapeline.pattern import Garment, StepKind

__all__ = ["dump"]


def dump(garment: Garment) -> str:
    """Sizes, points, edges, notches, seams, girths, and the steps in their order."""
    return (
        "\n".join([*_sizes(garment), *_points(garment), *_pieces(garment), *_sewing(garment), *_steps(garment)]) + "\n"
    )


def _sizes(garment: Garment) -> Iterator[str]:
    yield "SIZES, mm"
    for size in sorted(garment.sizes, key=lambda s: s.name):
        spread = f" give or take {_mm(size.sd_mm)}" if size.sd_mm else ""
        yield f"{size.name}: {_mm(size.length.mm)}, {size.source}{spread}"


def _points(garment: Garment) -> Iterator[str]:
    yield "\nPOINTS, mm: out, up"
    for label, point in sorted(garment.points.items()):
        yield f"{label}: {_place(point)}"


def _pieces(garment: Garment) -> Iterator[str]:
    for piece in garment.pieces:
        yield f"\nPIECE {piece.name}: {piece.title}, cut {piece.cut.quantity} of {piece.cut.cloth}" + (
            ", mirrored" if piece.cut.mirrored else ""
        )
        for edge in piece.edges:
            yield f"{edge.name}, {edge.kind}, {_mm(edge.length)} long"
            yield from _line(edge.path)
        for notch in sorted(piece.notches, key=lambda n: (n.edge, n.at_mm)):
            yield f"notch {notch.kind} on {notch.edge} at {_mm(notch.at_mm)}"
        yield f"grain {_place(piece.grain.start)} to {_place(piece.grain.end)}"


def _line(path: Path) -> Iterator[str]:
    yield f"    from {_place(path.start)}"
    for segment in path.segments:
        _, *handles, end = segment.control_points
        bent = f" by {' and '.join(map(_place, handles))}" if handles else ""
        yield f"    to {_place(end)}{bent}"


def _sewing(garment: Garment) -> Iterator[str]:
    yield "\nSEAMS, mm"
    for seam in sorted(garment.seams, key=lambda s: s.name):
        a, b = garment.run_length(seam.a), garment.run_length(seam.b)
        sides = f"{seam.side_text(seam.a)} {_mm(a)}, {seam.side_text(seam.b)} {_mm(b)}"
        yield f"{seam.name}: {sides}, ease {_mm(seam.ease.mm)}"
    yield "\nGIRTHS, mm"
    for girth in sorted(garment.girths, key=lambda g: g.name):
        yield f"{girth.name}: tape {_mm(girth.tape.mm)}, ease {_mm(girth.ease.mm)}"


def _steps(garment: Garment) -> Iterator[str]:
    yield "\nSTEPS, in their order"
    for step in garment.steps:
        if step.kind is StepKind.SECTION:
            yield f"- {step.says}"
            continue
        yield f"{step.label}: {step.says}"
        words = [text for text in (step.how_text(), *step.equations()) if text]
        yield from (f"    {text}" for text in words)


def _mm(value: float) -> str:
    return f"{round(value, 2) + 0.0:.2f}"


def _place(point: Point) -> str:
    return f"{_mm(point.x)}, {_mm(point.y)}"
