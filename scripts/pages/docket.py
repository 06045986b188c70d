"""docs/reference/docket.md: every key of a docket, with its default, its range and what it is for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Any

from scripts.pages.markdown import NOTICE, table
from tapeline.docket.choices import words_of
from tapeline.docket.finish import ALLOWANCE, HEM, NOTCH
from tapeline.docket.hand_sizes import HAND_SIZES
from tapeline.docket.lay import CLOTH_WIDTH, GARMENTS, LAY_LENGTHS, LAY_NUMBERS, LAY_WORDS
from tapeline.docket.wearer import ALLOWABLE
from tapeline.export.paper import PAPERS
from tapeline.finish import FinishChoices
from tapeline.finish.tools import USUAL_TOOLS, Lines
from tapeline.lay import LayCloth
from tapeline.lengths import Length
from tapeline.measures import Figure
from tapeline.pattern import Choice, Cloth, Corrections, Word, choices_of
from tapeline.styles import STYLES
from tapeline.units import Unit

__all__ = ["page"]

Row = list[str]
HEAD = ["key", "default", "from", "to", "what it is for"]


def page() -> str:
    """The page."""
    parts = [
        NOTICE,
        "# The docket\n",
        (
            "A docket is a TOML file: tables in square brackets, keys below them.\n"
            "Ranges are in cm where a key is a length.\n"
            "A bare number is in the docket's unit, and a length in quotes may "
            'carry its own: `"84,5 cm"`, `"845 mm"`, `"33 1/4 in"`.\n'
            "Everything that has a default may be left out.\n"
            "`tapeline new NAME.toml` writes a docket with all of this in it.\n"
        ),
        "## At the top\n",
        table(
            ["key", "default", "what it is for"],
            [
                [
                    "allow",
                    "[]",
                    "problems that were looked at and may pass, alone or for one tape (`tape-unlikely:waist`): "
                    + ", ".join(ALLOWABLE),
                ]
            ],
        ),
        "## wearer\n",
        table(["key", "default", "what it is for"], list(_wearer())),
        "The tapes stand in `[wearer.tapes]`; see [tapes](tapes.md).\n",
    ]
    for style in STYLES.values():
        parts += [
            f"## garment, style {style.name}\n",
            f"{style.says}.\n",
            table(HEAD, [*_garment(style.name), *_choices(style.choices(), ())]),
            *_words(style.choices()),
        ]
    parts += [
        "## garment.corrections\n",
        "What a fitting showed, and by how much it is corrected: see [correct the fit](../howto/corrections.md).\n",
        table(HEAD, list(_choices(Corrections(), ())), [1, 2, 3]),
        "## garment.sizes\n",
        "Sizes of the frame set by hand, in place of the rule or the survey.\n",
        table(HEAD, [[key, "", *_range(limits), limits.says] for key, limits in HAND_SIZES.items()], [2, 3]),
        "## cloth\n",
        table(HEAD, list(_choices(Cloth(), ())), [1, 2, 3]),
        "## finish\n",
        table(HEAD, list(_finish()), [1, 2, 3]),
        (
            "An allowance may be one width, or a table of widths by name: "
            "of a seam, of an edge on every piece (`neckline`) "
            'or of an edge of one piece (`"front.neckline"`); `default` is for all others, '
            "and the most exact name wins.\n"
        ),
        "## cutter\n",
        (
            "The tools of a machine that cuts, each with a name of your own, a colour, and the lines it follows: "
            '`[cutter.tools]` with `knife = { colour = "#ff0000", lines = ["cut", "notch"] }`.\n'
        ),
        table(
            ["tool", "colour", "lines"],
            [[tool.name, f"`{tool.colour}`", ", ".join(tool.lines)] for tool in USUAL_TOOLS],
        ),
        f"These two are the usual ones; lines are of {', '.join(Lines)}, each for one tool only.\n",
        "## lay\n",
        table(HEAD, list(_lay()), [1, 2, 3]),
        (
            "What stands in `[lay]` is about the shell, the main cloth; "
            "another cloth of the garment has a table of its own, such as `[lay.rib]`, "
            "with the same keys and its `width`. "
            "See [lay the pieces on the cloth](../howto/lay.md).\n"
        ),
    ]
    return "\n".join(parts)


def _wearer() -> Iterator[Row]:
    yield ["name", "", "written on the pieces"]
    yield ["figure", "", "whose tapes these are: " + ", ".join(Figure)]
    yield ["unit", str(Unit.CM), "of bare numbers, and of what is shown: " + ", ".join(Unit)]
    yield ["size", "", "a [standard size](sizes.md) in place of tapes; a tape that is given replaces the size's"]


def _garment(style: str) -> Iterator[Row]:
    yield ["style", str(next(iter(STYLES))), "", "", f"`{style}`"]
    yield ["frame", "survey", "", "", "survey, or proportional; children have no survey"]


def _choices(choices: Any, above: tuple[str, ...]) -> Iterator[Row]:  # noqa: ANN401 - any style's own dataclass
    ranges = choices_of(type(choices))
    for f in fields(choices):
        value, key = getattr(choices, f.name), ".".join((*above, f.name))
        limits = ranges.get(f.name)
        words = words_of(value)
        if words is not None:
            ends = _range(limits) if limits else ("", "")
            otherwise = "" if isinstance(value, Word) else ", or numbers in its place"
            says = limits.says if limits else f"{', '.join(words.words)}{otherwise}: see below"
            yield [key, str(words.word_for(value)), *ends, says]
        elif is_dataclass(value) and not isinstance(value, Length):
            yield from _choices(value, (*above, f.name))
        else:
            ends = _range(limits) if limits else ("", "")
            yield [key, _value(value), *ends, limits.says if limits else "a word for the cutting list"]


def _words(choices: Any, above: tuple[str, ...] = ()) -> Iterator[str]:  # noqa: ANN401 - any style's own dataclass
    """What the words of a style's choices stand for."""
    for f in fields(choices):
        value, key = getattr(choices, f.name), ".".join((*above, f.name))
        words = words_of(value)
        if words is None and is_dataclass(value) and not isinstance(value, Length):
            yield from _words(value, (*above, f.name))
        if words is not None and isinstance(value, Word):
            yield f"`{key}` takes a word:\n"
            yield table(["word", "what it means"], [[word, word.says] for word in type(value)], [])
            continue
        if words is None or not choices_of(type(value)):
            continue
        inside = list(choices_of(type(value)))
        rows = [[word, *(_value(getattr(meant, name)) for name in inside)] for word, meant in words.words.items()]
        yield f"`{key}` takes a word, or a table of numbers in its place:\n"
        yield table(["word", *inside], rows, range(1, len(inside) + 1))
        yield table(
            ["number", "from", "to", "what it is for"],
            [[f"{key}.{name}", *_range(limits), limits.says] for name, limits in choices_of(type(value)).items()],
            [1, 2],
        )


def _finish() -> Iterator[Row]:
    default = FinishChoices()
    for key, limits, mm in (
        ("allowance", ALLOWANCE, default.allowance_mm),
        ("hem", HEM, default.hem_mm),
        ("notch", NOTCH, default.notch_depth_mm),
    ):
        yield [key, f"{mm / 10:g}", *_range(limits), limits.says]
    yield ["paper", "A4", "", "", ", ".join(PAPERS) + ', or a roll: `"roll 914 mm"`, `"roll 36 in"`']


def _lay() -> Iterator[Row]:
    usual = LayCloth()
    for key, (kind, says) in LAY_WORDS.items():
        yield [key, str(getattr(usual, key)), "", "", f"{says}: {', '.join(kind)}"]
    for key, (name, limits) in LAY_LENGTHS.items():
        yield [key, f"{getattr(usual, name) / 10:g}", *_range(limits), limits.says]
    for key, limits in LAY_NUMBERS.items():
        yield [key, "" if key == "price" else "0", *_range(limits), limits.says]
    yield ["garments", "1", *_range(GARMENTS), GARMENTS.says]
    yield ["together", "[]", "", "", 'pieces that are laid as one block: `[["front", "sleeve"]]`']
    yield ["unmatched", "[]", "", "", 'pieces that need not match stripes or checks: `["pocket"]`']
    flaw = "`[{ along = 30, across = 20, length = 2, width = 2 }]`"
    yield ["flaws", "[]", "", "", f"places to keep clear of, from the beginning and from the lower edge: {flaw}"]
    yield [
        "width",
        "140",
        *_range(CLOTH_WIDTH),
        f"{CLOTH_WIDTH.says}; in a cloth's own table, for the shell in `[cloth]`",
    ]


def _range(limits: Choice) -> tuple[str, str]:
    return f"{limits.least:g}", f"{limits.most:g}"


def _value(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, Length):
        return f"{value.mm / 10:g}"
    if isinstance(value, Fraction):
        return str(value)
    return f"{value:g}" if isinstance(value, float) else str(value)
