"""The options of `tapeline lay`, and what they ask for."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from tapeline.problems import InputError, Problem, Severity

if TYPE_CHECKING:
    from tapeline.lay import LayCloth, LayPlan
    from tapeline.project import LayTask
    from tapeline.units import Unit

__all__ = ["Asked", "lay_options"]

SPREADS = ("open", "folded", "tubular", "face-to-face")
DIRECTIONS = ("one-way", "by-garment", "two-way")
LENGTHS = ("width", "selvedge", "gap", "repeat_along", "repeat_across", "line_along", "line_across")
_Function = TypeVar("_Function", bound=Callable[..., Any])


def lay_options(function: _Function) -> _Function:
    """All of them, below the command's name."""
    file = click.Path(path_type=Path)
    for option in reversed(
        (
            click.option("--cloth", multiple=True, help="Only this cloth: shell, rib. May be given again.  [all]"),
            click.option("--garments", type=int, help="So many of each docket's garment.  [the docket's, or 1]"),
            click.option("--width", help="Of the cloth, from selvedge to selvedge; of a tube its girth."),
            click.option("--spread", type=click.Choice(SPREADS), help="How the cloth lies.  [the docket's, or open]"),
            click.option(
                "--direction",
                type=click.Choice(DIRECTIONS),
                help="Which ways pieces may face; one-way for nap.  [the docket's, or two-way]",
            ),
            click.option("--selvedge", help="Left free at each selvedge."),
            click.option("--gap", help="Kept free between pieces."),
            click.option("--tilt", type=float, help="How far the grain may lean, degrees."),
            click.option("--repeat-along", help="Crosswise stripes: the repeat along the cloth."),
            click.option("--repeat-across", help="Lengthwise stripes: the repeat across it."),
            click.option("--line-along", help="From the beginning to the first dominant crosswise line."),
            click.option("--line-across", help="From the lower edge to the first dominant lengthwise line."),
            click.option("--flaw", multiple=True, help="'along, across, length, width': a place to keep clear of."),
            click.option("--together", multiple=True, help="'front, sleeve': pieces that are laid as one block."),
            click.option("--price", type=float, help="Of one metre of the cloth."),
            click.option("--widths", help="'140, 160': how long the lay gets on cloth of these widths."),
            click.option("--seconds", type=float, default=20.0, show_default=True, help="How long to look, a cloth."),
            click.option("--seed", type=int, default=0, help="Another number looks in other places."),
            click.option("--from", "from_", type=file, help="A kept plan to go on from."),
            click.option("--keep", type=file, help="Keep the plan as JSON: its coordinates."),
            click.option("--picture", type=file, help="Write the plan as a picture (SVG)."),
            click.option("--table", type=file, help="Write the coordinates as a table (CSV)."),
            click.option(
                "--pdf", type=file, help="Write the plan true to scale as PDF, on pages as wide as the strip."
            ),
            click.option("--dxf", type=file, help="Write the plan as DXF for a cutting table, in layers of pieces."),
            click.option("--plotter", type=file, help="Write the plan as HP-GL/2 for a plotter."),
            click.option("--instance", type=file, help="Pack an instance of research (JSON) in place of garments."),
        )
    ):
        function = option(function)
    return function


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What was typed; lengths as typed."""

    cloth: tuple[str, ...]
    garments: int | None
    width: str | None
    spread: str | None
    direction: str | None
    selvedge: str | None
    gap: str | None
    tilt: float | None
    repeat_along: str | None
    repeat_across: str | None
    line_along: str | None
    line_across: str | None
    flaw: tuple[str, ...]
    together: tuple[str, ...]
    price: float | None
    widths: str | None
    seconds: float
    seed: int
    from_: Path | None
    keep: Path | None
    picture: Path | None
    table: Path | None
    pdf: Path | None
    dxf: Path | None
    plotter: Path | None
    instance: Path | None

    @property
    def blocks(self) -> list[list[str]] | None:
        """Names of pieces that stay together; None where nothing was said."""
        return [_names(block) for block in self.together] or None

    def changed(self, unit: Unit) -> Callable[[LayCloth], LayCloth]:
        """What the options change of a cloth.

        Raises:
            InputError: `lay-flaw` for a flaw that is not four lengths, or what a length that is none raises.
        """
        from dataclasses import replace

        from tapeline.lay import Direction, Flaw, Spread
        from tapeline.units import parse_length

        changes: dict[str, Any] = {}
        for name in LENGTHS:
            if (typed := getattr(self, name)) is not None:
                changes[f"{name}_mm"] = parse_length(typed, unit, signed=True)
        if self.spread is not None:
            changes["spread"] = Spread(self.spread)
        if self.direction is not None:
            changes["direction"] = Direction(self.direction)
        if self.tilt is not None:
            changes["tilt"] = math.radians(self.tilt)
        if self.price is not None:
            changes["price"] = self.price
        if self.flaw:
            flaws = []
            for typed in self.flaw:
                parts = _names(typed)
                if len(parts) != 4:
                    says = f"a flaw is {typed!r}; it is four lengths: along, across, length, width"
                    raise InputError(Problem("lay-flaw", Severity.ERROR, says, "--flaw", "Nothing was laid"))
                flaws.append(Flaw(*(parse_length(part, unit, signed=True) for part in parts)))
            changes["flaws"] = tuple(flaws)
        return lambda cloth: replace(cloth, **changes)

    def files(self, tasks: Sequence[LayTask]) -> dict[Path, tuple[str, str]]:
        """Which file is of which kind and of which cloth; the cloth is in its name where there are several."""
        found: dict[Path, tuple[str, str]] = {}
        for kind in ("keep", "picture", "table", "pdf", "dxf", "plotter"):
            path: Path | None = getattr(self, kind)
            for task in tasks if path is not None else ():
                place = self.of_cloth(path, task, tasks)
                if place in found:
                    says = f"--{kind} and --{found[place][0]} both name {path}, and one would write over the other"
                    raise InputError(Problem("would-overwrite", Severity.ERROR, says, str(path), "give two names"))
                found[place] = (kind, task.cloth.name)
        return found

    def begun(self, tasks: Sequence[LayTask]) -> dict[str, LayPlan]:
        """The kept plans to go on from, by their cloth."""
        from tapeline.lay import taken_up

        if self.from_ is None:
            return {}
        found = {}
        for task in tasks:
            path = self.of_cloth(self.from_, task, tasks)
            found[task.cloth.name] = taken_up(text_of(path), str(path))
        return found

    @staticmethod
    def of_cloth(path: Path | None, task: LayTask, tasks: Sequence[LayTask]) -> Path:
        """The file of one cloth."""
        named = Path() if path is None else path
        return named if len(tasks) == 1 else named.with_stem(f"{named.stem}-{task.cloth.name}")


MOST_MB = 100
"""A larger file is no plan and no instance."""


def text_of(path: Path) -> str:
    """The text of a file that was named.

    Raises:
        InputError: `lay-unreadable`.
    """
    try:
        if path.is_file() and path.stat().st_size > MOST_MB * 1_000_000:
            raise OSError(27, f"it is larger than {MOST_MB} MB")  # noqa: TRY301 - all that is wrong ends below
        return path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        reason = "it is not text" if isinstance(error, UnicodeDecodeError) else (error.strerror or str(error)).lower()
        says = f"cannot read {path}: {reason}"
        raise InputError(Problem("lay-unreadable", Severity.ERROR, says, str(path), "Nothing was laid")) from error


def _names(typed: str) -> list[str]:
    return [part.strip() for part in typed.split(",") if part.strip()]
