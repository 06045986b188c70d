"""docs/reference/sizes.md: letter codes, women's intervals, and the standard wearers behind a size."""

from __future__ import annotations

from scripts.pages.markdown import NOTICE, table
from tapeline.measures import LETTER_CODES, WOMEN_INTERVALS, Figure, required_tapes, size_wearer
from tapeline.problems import InputError

__all__ = ["page"]

MOST_CM = 200


def page() -> str:
    """The page."""
    return "\n".join(
        [
            NOTICE,
            "# Standard sizes\n",
            (
                '`size = "88"` or `size = "M"` in a docket stands for a wearer whom nobody measured.\n'
                "Her bust, or his chest, is the size's; the seven other tapes are the means of the survey, given that "
                "girth.\n"
                "Outside the survey's people (women's bust 70 to 120 cm, men's chest 78 to 120 cm) its lines are "
                "continued, and the docket's report says so.\n"
                "There is no standard child.\n"
            ),
            "## Letter codes\n",
            (
                "EN 13402-3, read in a secondary text.\n"
                "A code holds from its first girth up to but not including its last, in cm.\n"
            ),
            table(
                ["code", "women's bust", "men's chest"],
                [
                    [woman.label, _span(woman.low_mm, woman.high_mm), _span(man.low_mm, man.high_mm)]
                    for woman, man in zip(LETTER_CODES[Figure.WOMAN], LETTER_CODES[Figure.MAN], strict=True)
                ],
            ),
            "## Intervals for women\n",
            "EN 13402-3. Bust borders from 74 to 131 cm were read in a secondary text, the rest is from memory.\n",
            *(
                table([tape, "from", "up to"], [[s.label, *_ends(s.low_mm, s.high_mm)] for s in intervals], [0, 1, 2])
                for tape, intervals in WOMEN_INTERVALS.items()
            ),
            "## Standard wearers, women\n",
            _wearers(Figure.WOMAN),
            "## Standard wearers, men\n",
            _wearers(Figure.MAN),
        ]
    )


def _wearers(figure: Figure) -> str:
    names = [tape.name for tape in required_tapes(figure)]
    rows = []
    for girth in range(1, MOST_CM):
        try:
            wearer = size_wearer(str(girth), figure)
        except InputError:
            continue
        rows.append([str(girth), *(f"{wearer[name] / 10:.1f}" for name in names)])
    return table(["size", *(name.replace("_", " ") for name in names)], rows, range(len(names) + 1))


def _ends(low: float, high: float) -> tuple[str, str]:
    return f"{low / 10:g}", f"{high / 10:g}"


def _span(low: float, high: float) -> str:
    return " to ".join(_ends(low, high))
