"""Drafted garments on the table: what is cut from each cloth, laid so that little is wasted."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from tapeline.finish import Finished
from tapeline.lay import LayCloth, LayPiece, LayPlan, LaySettings, cloths_of, lay, lay_pieces, matches
from tapeline.problems import InputError, Problem, Severity, closest
from tapeline.project.drafted import Drafted
from tapeline.project.products import finished

__all__ = ["LayTask", "compared", "lay_plans", "lay_tasks"]


@dataclass(frozen=True, slots=True)
class LayTask:
    """What is cut from one cloth."""

    cloth: LayCloth
    pieces: tuple[LayPiece, ...]
    problems: tuple[Problem, ...] = ()
    """What is worth knowing before it is laid."""

    @property
    def garments(self) -> int:
        """How many, all kinds together."""
        return sum({piece.garment: piece.garments for piece in self.pieces}.values())


def lay_tasks(
    drafted: Sequence[Drafted],
    *,
    garments: int | None = None,
    cloths: Sequence[str] = (),
    changed: Callable[[LayCloth], LayCloth] | None = None,
    together: Sequence[Sequence[str]] | None = None,
) -> tuple[LayTask, ...]:
    """A lay for each cloth that the garments are cut from; all garments of one cloth in one lay.

    Args:
        drafted: Garments of any sizes and styles.
        garments: How many of each, in place of what the dockets say.
        cloths: Only these; all unless given.
        changed: What to change of each cloth that the first docket which knows it describes.
        together: Names of pieces that stay together, in place of what the dockets say.

    Raises:
        InputError: `lay-cloth-unknown`, `lay-piece-unknown` for names that no garment has, `lay-block` for a piece
            that is named twice among what stays together; and what `lay_pieces` raises.
    """
    if not drafted:
        raise InputError(Problem("lay-empty", Severity.ERROR, "no garment is given", hint="Nothing was laid"))
    all_finished = [finished(one) for one in drafted]
    known = cloths_of(all_finished)
    problems = [_unknown_cloth(name, known) for name in cloths if name not in known]
    blocks = [_blocks(one.docket.lay, together) for one in drafted]
    problems += _unknown_pieces(drafted, all_finished, together)
    problems += _named_twice([one.docket.lay.together for one in drafted] if together is None else [together])
    if problems:
        raise InputError(problems)
    names = _names(drafted)
    made = []
    for name in dict.fromkeys(cloths or known):
        said, notes = _described(name, drafted)
        cloth = changed(said) if changed is not None else said
        if changed is not None and changed(replace(said, width_mm=said.width_mm + 1)).width_mm == cloth.width_mm:
            notes = []  # its width was given, whatever the dockets do not say
        notes += _larger(cloth)
        pieces: list[LayPiece] = []
        for one, whole, own, block in zip(drafted, all_finished, names, blocks, strict=True):
            unmatched = set(one.docket.lay.unmatched)
            places = {piece: at for piece, at in matches(whole).items() if piece not in unmatched}
            count = one.docket.lay.garments if garments is None else garments
            pieces += lay_pieces(whole, cloth, own, garments=count, blocks=block, matches=places)
        made.append(LayTask(cloth, tuple(pieces), tuple(notes)))
    return tuple(made)


def lay_plans(
    task: LayTask, seconds: float = 20.0, *, start: LayPlan | None = None, seed: int = 0
) -> Iterator[LayPlan]:
    """Plans of one cloth's lay, each proved and shorter than the one before; see `tapeline.lay.lay`.

    A plan to go on from has to be of the same cloth and the same pieces.

    Raises:
        InputError: `lay-other` when it is not; and what `lay` raises.
    """
    if start is not None:
        if (start.cloth, _alike(start.pieces)) != (task.cloth, _alike(task.pieces)):
            what = "cloth" if start.cloth != task.cloth else "pieces"
            says = f"the kept plan is of other {what} than the docket and the options say"
            hint = "lay it anew, without the kept plan. Nothing was laid"
            raise InputError(Problem("lay-other", Severity.ERROR, says, f"cloth {task.cloth.name}", hint))
        start = replace(start, cloth=task.cloth, pieces=task.pieces)
    return lay(task.pieces, task.cloth, seconds, start=start, seed=seed)


def compared(task: LayTask, widths_mm: Sequence[float], seconds: float) -> dict[float, LayPlan | None]:
    """The lay on wider or narrower cloth, each width given as many seconds; None where a piece does not fit."""
    found: dict[float, LayPlan | None] = {}
    for width in widths_mm:
        best: LayPlan | None = None
        try:
            for best in lay(task.pieces, replace(task.cloth, width_mm=width), seconds):  # noqa: B007 - the last counts
                pass
        except InputError as error:
            if any(problem.code != "lay-too-narrow" for problem in error.problems):
                raise
        found[width] = best
    return found


def _alike(pieces: Sequence[LayPiece]) -> list[tuple[object, ...]]:
    """What has to be the same of pieces: outlines to a thousandth of a millimetre."""
    return [
        (
            *(piece.key, piece.upright, piece.turned_over, piece.garments, piece.on_fold, piece.block),
            tuple((round(p.x, 3), round(p.y, 3)) for p in piece.outline),
        )
        for piece in pieces
    ]


def _described(name: str, drafted: Sequence[Drafted]) -> tuple[LayCloth, list[Problem]]:
    """The cloth as the first docket has it, and a note where none says how wide it is."""
    for one in drafted:
        cloth = one.docket.lay.cloths.get(name)
        if cloth is not None and (name != "shell" or one.docket.cloth.width is not None):
            return cloth, []
    cloth = next((c for one in drafted if (c := one.docket.lay.cloths.get(name))), LayCloth(name=name))
    says = f"no docket says how wide the {name} is; it is laid on {cloth.width_mm / 10:g} cm"
    where = "cloth.width" if name == "shell" else f"lay.{name}.width"
    return cloth, [Problem("lay-width-assumed", Severity.NOTE, says, where, f"write {where}, or give --width")]


def _larger(cloth: LayCloth) -> list[Problem]:
    """What pieces are laid larger by, so that nobody washes that cloth before it is cut as well."""
    shrinks = ((cloth.shrink_length, "length"), (cloth.shrink_width, "width"))
    shares = [f"{share:g} % in {way}" for share, way in shrinks if share]
    if not shares:
        return []
    says = f"the {cloth.name} shrinks by {' and '.join(shares)}; its pieces are laid so much larger"
    hint = "cut it unwashed; for washed cloth take the shrinkage out of the docket, and lay it anew"
    return [Problem("lay-shrinks", Severity.NOTE, says, f"cloth {cloth.name}", hint)]


def _names(drafted: Sequence[Drafted]) -> list[str]:
    """The wearers; with the docket or a number where two are called alike."""
    names = [one.docket.wearer.name or one.docket.name for one in drafted]
    if len(set(names)) < len(names):
        names = [f"{name}, {one.docket.style.name}" for name, one in zip(names, drafted, strict=True)]
    if len(set(names)) < len(names):
        names = [f"{name} {n}" for n, name in enumerate(names, 1)]
    return names


def _blocks(settings: LaySettings, together: Sequence[Sequence[str]] | None) -> Mapping[str, str]:
    if together is None:
        return settings.blocks
    return replace(settings, together=tuple(map(tuple, together))).blocks


def _unknown_cloth(name: str, known: Sequence[str]) -> Problem:
    says = f"no piece is cut from a cloth called {name}"
    return Problem(
        "lay-cloth-unknown", Severity.ERROR, says, f"cloth {name}", f"{closest(name, known)}. Nothing was laid"
    )


def _unknown_pieces(
    drafted: Sequence[Drafted], all_finished: Sequence[Finished], together: Sequence[Sequence[str]] | None
) -> list[Problem]:
    known = {one.piece.name for whole in all_finished for one in whole.pieces}
    asked = {name for one in drafted for name in one.docket.lay.unmatched}
    blocks = [block for one in drafted for block in one.docket.lay.together] if together is None else list(together)
    asked |= {name for block in blocks for name in block}
    return [
        Problem("lay-piece-unknown", Severity.ERROR, f"there is no piece {name}", "lay", f"{closest(name, known)}.")
        for name in sorted(asked - known)
    ]


def _named_twice(settings: Sequence[Sequence[Sequence[str]]]) -> list[Problem]:
    """A piece lies in one block: which of two is meant, nobody knows."""
    twice = {
        name for blocks in settings for name, n in Counter(name for block in blocks for name in block).items() if n > 1
    }
    hint = "name each piece once. Nothing was laid"
    return [
        Problem("lay-block", Severity.ERROR, f"{name} is named twice among the pieces that stay together", "lay", hint)
        for name in sorted(twice)
    ]
