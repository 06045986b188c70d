"""The table of standard sizes, for `tapeline measure --sizes`."""

from __future__ import annotations

import json

from tapeline.cli.show import columns, heading, in_words, paragraph, say
from tapeline.measures import LETTER_CODES, WOMEN_INTERVALS, Figure, Wearer, letter_code, size_wearer
from tapeline.problems import InputError
from tapeline.units import Unit

__all__ = ["show_sizes"]

SHORT_WORDS = "upper: upper chest; shoulder: shoulder width; back: back length; depth: hip depth; arm: arm length."


def show_sizes(figure: Figure, unit: Unit, *, as_json: bool) -> None:
    """Every standard wearer of a figure, and the letter codes."""
    wearers = standard_wearers(figure, unit)
    if not wearers:
        size_wearer("88", figure, unit)  # says why there is none
    if as_json:
        data = {label: {"letter": _letter(wearer), **wearer.tapes} for label, wearer in wearers.items()}
        say(json.dumps({"figure": str(figure), "unit": "mm", "sizes": data}, ensure_ascii=False, indent=2))
        return
    say(f"Standard sizes, {figure}, in {in_words(unit)}.")
    paragraph(
        "The seven other tapes are the survey's means, given the bust or chest: nobody was measured for them. "
        "Far from the survey's people its lines are continued.",
    )
    heading("Sizes")
    tapes = list(next(iter(wearers.values())).tapes)
    head = ("size", "code", *(_short(name) for name in tapes))
    rows = [
        (label, _letter(wearer), *(f"{wearer[name] / unit.mm:.1f}" for name in tapes))
        for label, wearer in wearers.items()
    ]
    columns(rows, head, "rl" + "r" * len(tapes))
    paragraph(SHORT_WORDS, "  ")
    heading(f"Letter codes, by {figure.fullest} (EN 13402-3, read in a secondary text)")
    codes = [
        (size.label, f"{size.low_mm / unit.mm:.1f} up to {size.high_mm / unit.mm:.1f} {unit.sign}")
        for size in LETTER_CODES[figure]
    ]
    columns(codes)


def standard_wearers(figure: Figure, unit: Unit) -> dict[str, Wearer]:
    """By label, those of the figure; none for a child."""
    women = [size.label for size in WOMEN_INTERVALS["bust"]]
    labels = women if figure is Figure.WOMAN else [str(number) for number in range(60, 160)]
    found = {}
    for label in labels:
        try:
            found[label] = size_wearer(label, figure, unit)
        except InputError:
            continue  # men's sizes go in steps
    return found


def _letter(wearer: Wearer) -> str:
    return letter_code(wearer["bust"], wearer.figure) or "-"


def _short(name: str) -> str:
    """One word of a tape's name: the table has ten columns, and `SHORT_WORDS` stands below it."""
    return name.replace("hip_depth", "depth").partition("_")[0]
