"""What an alteration adds to the construction: its own steps, after those that are there; none of them is changed."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from tapeline.geometry import Path, Point
from tapeline.lengths import Length, Phrase
from tapeline.pattern import Edge, Garment, Piece, Step, StepKind
from tapeline.problems import InputError, Problem, Severity, closest

__all__ = ["Story", "edge_named", "latest", "piece_named", "spoken", "unused"]

SOURCE = "common practice, no published source"
SAME_PLACE_MM = 1e-6
"""A point that moves by less has not moved."""


@dataclass
class Story:
    """Steps added to a garment's, each under a label that is still free.

    A point that moves keeps its first step where it was, and gets a second under its name and a number, so that the
    hand can follow: `hip_level`, then `hip_level_2`.
    """

    garment: Garment
    added: list[Step] = field(default_factory=list)
    _taken: set[str] = field(init=False, repr=False)
    """Labels of the garment's steps, and of so many that were added."""
    _seen: int = field(default=0, init=False, repr=False)

    def __post_init__(self) -> None:
        self._taken = {step.label for step in self.garment.steps}

    @property
    def steps(self) -> tuple[Step, ...]:
        """All of them."""
        return (*self.garment.steps, *self.added)

    def section(self, piece: str, title: str) -> None:
        """Begin the alteration."""
        self.added.append(Step(StepKind.SECTION, self._free(f"{piece}.{title}", " "), title))

    def point(self, label: str, says: str, how: Phrase, point: Point, needs: tuple[str, ...], *lengths: Length) -> str:
        """A place; its label, with a number where the name is taken."""
        label = self._free(label)
        self.added.append(Step(StepKind.POINT, label, says, how, lengths, needs, SOURCE, point=point))
        return label

    def line(self, label: str, says: str, how: Phrase, path: Path, needs: tuple[str, ...], *lengths: Length) -> str:
        """A line; its label, with a number where the name is taken."""
        label = self._free(label)
        self.added.append(Step(StepKind.LINE, label, says, how, lengths, needs, SOURCE, path=path))
        return label

    def edge(self, was: str, now: str, path: Path, *, says: str, how: Phrase, needs: tuple[str, ...]) -> None:
        """An edge of a piece that is not as it was, and the edge that it comes from (`back.side`)."""
        known = self.label_of(was)
        self.line(now, says, how, path, (known, *needs) if known else needs)

    def label_of(self, label: str) -> str:
        """The newest label of a line, or nothing where no step drew it."""
        named = [step.label for step in _named(self.steps, label) if step.path is not None]
        return named[-1] if named else ""

    def _free(self, label: str, gap: str = "_") -> str:
        taken = self._taken
        # Steps are added elsewhere too: those that came since are looked at.
        taken.update(step.label for step in self.added[self._seen :])
        self._seen = len(self.added)
        if label not in taken:
            return label
        number = 2
        while f"{label}{gap}{number}" in taken:
            number += 1
        return f"{label}{gap}{number}"


def latest(garment: Garment, label: str, kind: StepKind | None = None) -> Step:
    """The step that says where a point or line is now, after all alterations so far.

    An end of a band may have a point and an edge of one name: the kind says which is meant, where there are both.

    Raises `InputError` (`label-unknown`) when nothing on the garment is called so.
    """
    named = _named(garment.steps, label)
    if not named:
        known = [step.label for step in garment.steps if step.kind in (StepKind.POINT, StepKind.LINE)]
        raise InputError(
            Problem(
                "label-unknown",
                Severity.ERROR,
                f"no point or line of the {garment.style} is called {label}",
                label,
                closest(label, known),
            )
        )
    return next((step for step in reversed(named) if step.kind is kind), named[-1])


def _named(steps: tuple[Step, ...], label: str) -> list[Step]:
    """Steps of that label, with and without a number, in order."""
    numbered = re.compile(r"(_\d+)?")
    past = len(label)
    return [
        step
        for step in steps
        if step.label.startswith(label) and step.kind is not StepKind.SECTION and numbered.fullmatch(step.label[past:])
    ]


def piece_named(garment: Garment, name: str) -> Piece:
    """A piece; raises `InputError` (`piece-unknown`) when the garment has none of that name."""
    for piece in garment.pieces:
        if piece.name == name:
            return piece
    raise InputError(
        Problem(
            "piece-unknown",
            Severity.ERROR,
            f"the {garment.style} has no piece {name}",
            name,
            closest(name, [piece.name for piece in garment.pieces]),
        )
    )


def edge_named(piece: Piece, name: str) -> Edge:
    """An edge; raises `InputError` (`edge-unknown`) when the piece has none of that name."""
    names = [edge.name for edge in piece.edges]
    if name in names:
        return piece.edge(name)
    says = f"the {spoken(piece.name)} has no edge {name}"
    raise InputError(Problem("edge-unknown", Severity.ERROR, says, f"{piece.name}.{name}", closest(name, names)))


def unused(kind: str, name: str, taken: list[str]) -> None:
    """Raises `InputError` (`name-taken`) when something of that name is there already."""
    if name in taken:
        raise InputError(
            Problem(
                "name-taken",
                Severity.ERROR,
                f"there is a {kind} {name} already; names tell {kind}s apart",
                name,
                f"choose another name; taken are {', '.join(sorted(taken))}",
            )
        )


def spoken(name: str) -> str:
    """A label as it is read: `back hip level`."""
    return name.replace(".", " ").replace("_", " ")
