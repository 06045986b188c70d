"""What can be cut in one: edges that lie on each other, of pieces that are cut alike, on one fold at most."""

from __future__ import annotations

from tapeline.alter.story import spoken
from tapeline.geometry import Path
from tapeline.pattern import Garment, Piece, Seam
from tapeline.problems import InputError, Problem, Severity

__all__ = ["cut_alike", "lies_flat", "on_one_fold", "refused", "seam_of_two", "sewn_once"]

APART_MM = 0.1
"""Two seam lines that differ by less lie on each other: truing's own limit for a seam."""
LOOKS = 41
"""Places along both edges that are compared."""


def seam_of_two(garment: Garment, name: str) -> Seam:
    """The seam of that name, where it sews one edge of a piece to one of another."""
    for seam in garment.seams:
        if seam.name == name:
            pieces = {ref.piece for ref in (*seam.a, *seam.b)}
            if len(seam.a) == len(seam.b) == 1 and len(pieces) == 2:
                return seam
            what = (
                f"{seam.side_text(seam.a)} is sewn to {seam.side_text(seam.b)}; that is not one edge each of two pieces"
            )
            raise refused("seam-not-flat", name, f"the seam {name} cannot be cut in one: {what}", "join edge to edge")
    known = ", ".join(seam.name for seam in garment.seams)
    raise refused("seam-unknown", name, f"the {garment.style} has no seam {name}", f"it has {known}")


def sewn_once(garment: Garment, seam: Seam) -> None:
    """Neither edge is sewn to a third as well: cut in one, there would be no edge left for that."""
    edges = {(ref.piece, ref.edge) for ref in (*seam.a, *seam.b)}
    for other in garment.seams:
        if other.name != seam.name and edges & {(ref.piece, ref.edge) for ref in (*other.a, *other.b)}:
            what = f"an edge of the seam {seam.name} is sewn in the seam {other.name} too"
            raise refused("edge-sewn-twice", seam.name, what, f"leave the seam, or join {other.name} first")


def lies_flat(seam: Seam, lying: Path, laid: Path) -> None:
    """Both edges lie on each other, place by place."""
    apart = max(
        lying.at(lying.length * k / (LOOKS - 1)).distance_to(laid.at(laid.length * k / (LOOKS - 1)))
        for k in range(LOOKS)
    )
    if apart > APART_MM:
        raise refused(
            "seam-not-flat",
            seam.name,
            f"the edges of the seam {seam.name} do not lie on each other: they are {apart:.1f} mm apart in places, and "
            f"{APART_MM} mm are allowed",
            "only straight edges, or edges of one curve, are cut in one",
        )


def cut_alike(one: Piece, two: Piece) -> None:
    """As many of the one as of the other come out of one cloth; a half on the fold is both of a pair."""
    how = [
        (piece.cut.cloth, piece.cut.quantity * 2, True)
        if piece.on_fold
        else (piece.cut.cloth, piece.cut.quantity, piece.cut.mirrored)
        for piece in (one, two)
    ]
    if how[0] != how[1]:
        said = [
            f"the {spoken(p.name)} is cut {q} times in {cloth}"
            for p, (cloth, q, _) in zip((one, two), how, strict=True)
        ]
        hint = "join pieces of one cloth that are cut equally often; unfold both, or neither"
        raise refused("cut-differently", two.name, f"{said[0]}, and {said[1]}, folds counted twice", hint)


def on_one_fold(made: Piece, seam: str) -> None:
    """No piece lies on two folds of the cloth."""
    if sum(edge.fold for edge in made.edges) > 1:
        what = f"cut in one along {seam}, the {spoken(made.name)} would lie on two folds"
        raise refused("two-folds", made.name, what, "unfold one of the pieces, or leave the seam")


def refused(code: str, where: str, what: str, hint: str) -> InputError:
    """What cannot be cut in one, and why."""
    return InputError(Problem(code, Severity.ERROR, what, where, hint))
