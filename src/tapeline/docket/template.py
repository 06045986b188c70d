"""The docket that `tapeline new` writes: every choice with its default, its range and its reason beside it."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Any

from tapeline.docket.choices import Words, words_of
from tapeline.docket.finish import ALLOWANCE, HEM, NOTCH
from tapeline.docket.hand_sizes import HAND_SIZES
from tapeline.docket.lay import CLOTH_WIDTH, GARMENTS, LAY_LENGTHS, LAY_NUMBERS, LAY_WORDS
from tapeline.finish import FinishChoices
from tapeline.lay.cloth import LayCloth
from tapeline.lengths import Length
from tapeline.measures import Figure, Tape, tapes_of
from tapeline.pattern import Choice, Cloth, Corrections, Word, choices_of
from tapeline.styles import Style
from tapeline.units import Unit

__all__ = ["template"]

WIDTH = 100
"""Of a line of the docket."""
BESIDE = 30
"""Where the words beside a value begin."""


def template(style: Style, unit: Unit, size: str | None = None, figure: Figure = Figure.WOMAN, name: str = "") -> str:
    """A commented docket: what is chosen stands in it, every default stands behind a #.

    >>> from tapeline.styles import STYLES
    >>> print(template(STYLES["tee"], Unit.CM, "88")[:48])
    # A docket of Tapeline: the work order of one ga

    Args:
        style: What is sewn.
        unit: Of bare numbers.
        size: A standard size whose tapes stand in until the wearer's are taken; without it the tapes are left open.
        figure: Whose tapes are listed.
        name: Of the wearer.
    """
    lines = [
        *_remark("A docket of Tapeline: the work order of one garment. A # begins a remark."),
        *_remark("Lines behind a # hold the default: take the # away to choose something else."),
        *_remark(f'Bare numbers are in {unit}; 84.5, "84,5 cm", "845 mm" and "33 1/4 in" are all understood.'),
        "",
        _line("allow = []", "problems you have looked at and let pass, as the report names them"),
        "",
        "[wearer]",
        f"name = {_quoted(name)}" if name else _line('# name = ""', "written on the pieces"),
        _line(f'figure = "{figure}"', ", ".join(Figure)),
        _line(f'unit = "{unit}"', ", ".join(Unit)),
        *_size(size, figure),
        "",
        *_tapes(size, figure),
        "[garment]",
        _line(f'style = "{style.name}"', style.says),
        *_frame(figure),
        *_choices(style.choices(), unit, ()),
        "",
        *_remark("What a fitting showed, and by how much it is corrected:"),
        "[garment.corrections]",
        *_choices(Corrections(), unit, ()),
        "",
        *_remark("Sizes set by hand, in place of the rule or the survey:"),
        "[garment.sizes]",
        *(_line(f"# {key} =", f"{limits.says}, {_range(limits, unit)}") for key, limits in HAND_SIZES.items()),
        "",
        "[cloth]",
        *_cloth(unit),
        "",
        "[finish]",
        *_finish(unit),
        "",
        *_remark("How the cloth lies for cutting; another cloth of the garment has a table of its own:"),
        "[lay]",
        *_lay(unit),
    ]
    return "\n".join(lines) + "\n"


def _size(size: str | None, figure: Figure) -> Iterator[str]:
    if size is not None:
        yield _line(f"size = {_quoted(size)}", "a standard size; a tape below replaces that size's")
    elif figure.has_survey:
        yield _line('# size = "M"', "a standard size in place of tapes: a letter code, or a bust or chest in cm")


def _tapes(size: str | None, figure: Figure) -> Iterator[str]:
    yield "[wearer.tapes]"
    groups = (
        (True, "Tapes of the size; one that you take replaces the size's:" if size else "The eight tapes to take:"),
        (False, "Taken when you can; each replaces an estimate:"),
    )
    # A child's fullest girth may be called chest as well; one word is enough here.
    tapes = [tape for tape in tapes_of(figure) if tape.name != "chest" or figure is Figure.MAN]
    for required, title in groups:
        yield from _remark(title)
        yield ""
        for tape in tapes:
            if tape.required is required:
                yield from _tape(tape)


def _tape(tape: Tape) -> Iterator[str]:
    yield from _remark(f"{tape.title}. {_first_sentence(tape.take)}")
    yield f"# {tape.name} ="
    yield ""


def _frame(figure: Figure) -> Iterator[str]:
    if figure.has_survey:
        yield _line('# frame = "survey"', "survey: follows bodies measured; proportional: the classroom rule")
    else:
        yield _line('# frame = "proportional"', "there is no survey of children")


def _choices(choices: Any, unit: Unit, above: tuple[str, ...]) -> Iterator[str]:  # noqa: ANN401 - any style's own
    ranges = choices_of(type(choices))
    for f in fields(choices):
        value = getattr(choices, f.name)
        key = ".".join((*above, f.name))
        words = words_of(value)
        if words is not None:
            yield from _words(key, value, words, ranges.get(f.name), unit)
        elif is_dataclass(value) and not isinstance(value, Length):
            yield from _choices(value, unit, (*above, f.name))
        else:
            limits = ranges.get(f.name)
            says = f"{limits.says}, {_range(limits, unit, value)}" if limits else ""
            yield _line(f"# {key} = {_value(value, unit)}", says)


def _words(key: str, value: Any, words: Words, limits: Choice | None, unit: Unit) -> Iterator[str]:  # noqa: ANN401 - any choice
    others = ", ".join(words.words)
    word = words.word_for(value)
    if limits is not None:
        yield _line(f'{key} = "{word}"', f"{limits.says}, {_range(limits, unit)}")
        return
    if isinstance(value, Word):
        yield _line(f'{key} = "{word}"', others)
        return
    yield _line(f'{key} = "{word}"', f"{others}; or numbers in its place, such as:")
    ranges = choices_of(type(value))
    inside = ", ".join(f"{f.name} = {_value(getattr(value, f.name), unit)}" for f in fields(value))
    yield f"# {key} = {{ {inside} }}"
    for name, choice in ranges.items():
        yield from _remark(f"    {name}: {choice.says}, {_range(choice, unit, getattr(value, name))}")


def _cloth(unit: Unit) -> Iterator[str]:
    cloth = Cloth()
    yield f"# kind = {_quoted(cloth.kind)}"
    yield _line(f'# sort = "{cloth.sort}"', ", ".join(type(cloth.sort)))
    for name, limits in choices_of(Cloth).items():
        value = getattr(cloth, name)
        if value is None:
            yield _line(f"# {name} =", f"{limits.says}, {_range(limits, unit)}")
        else:
            yield _line(f"# {name} = {_value(value, unit)}", f"{limits.says}, {_range(limits, unit, value)}")


def _finish(unit: Unit) -> Iterator[str]:
    usual = FinishChoices()
    allowance, hem, notch = (Length(mm) for mm in (usual.allowance_mm, usual.hem_mm, usual.notch_depth_mm))
    yield _line(
        f"# allowance = {_value(allowance, unit)}", f"seam allowance, {_range(ALLOWANCE, unit)}; or by seam and edge:"
    )
    narrow = _value(Length(6), unit)
    widths = f'default = {_value(allowance, unit)}, neckline = {narrow}, "sleeve.hem" = {_value(hem, unit)}'
    yield f"# allowance = {{ {widths} }}"
    yield _line(f"# hem = {_value(hem, unit)}", f"depth of the hems, {_range(HEM, unit)}: {HEM.says}")
    yield _line(f"# notch = {_value(notch, unit)}", f"depth of the notches, {_range(NOTCH, unit)}")
    yield _line('# paper = "A4"', 'A4, A3, A2, A1, A0, Letter, "roll 914 mm", "roll 36 in"')


def _lay(unit: Unit) -> Iterator[str]:
    usual = LayCloth()
    for key, (kind, says) in LAY_WORDS.items():
        yield _line(f'# {key} = "{getattr(usual, key)}"', f"{says}: {', '.join(kind)}")
    for key, (name, limits) in LAY_LENGTHS.items():
        length = Length(getattr(usual, name))
        yield _line(f"# {key} = {_value(length, unit)}", f"{limits.says}, {_range(limits, unit, length)}")
    for key, limits in LAY_NUMBERS.items():
        yield _line(f"# {key} = 0", f"{limits.says}, {_range(limits, unit, 0)}")
    yield _line("# garments = 1", GARMENTS.says)
    yield _line("# together = []", 'pieces laid as one block: [["front", "sleeve"]]')
    yield _line("# unmatched = []", 'pieces that need not match stripes: ["pocket"]')
    yield _line("# flaws = []", "places to keep clear of: [{ along = 30, across = 20, length = 2, width = 2 }]")
    rib = _value(Length(1000), unit)
    yield _line(f"# rib = {{ width = {rib} }}", f"the rib's own; {CLOTH_WIDTH.says}, {_range(CLOTH_WIDTH, unit)}")


def _range(limits: Choice, unit: Unit, value: object = None) -> str:
    if value is None or isinstance(value, Length):
        least, most = (Length(end * 10).show(unit) for end in (limits.least, limits.most))
        return f"{least.removesuffix(' ' + unit.sign)} to {most}"
    return f"{limits.least:g} to {limits.most:g}"


def _value(value: Length | Fraction | float | str, unit: Unit) -> str:
    if isinstance(value, Length):
        return value.show(unit).removesuffix(f" {unit.sign}")
    if isinstance(value, Fraction) and value.denominator not in (1, 2, 4, 5, 8, 10):
        return f'"{value}"'
    return _quoted(value) if isinstance(value, str) else f"{float(value):g}"


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _first_sentence(text: str) -> str:
    return text.partition(". ")[0].rstrip(".") + "."


def _remark(text: str) -> list[str]:
    indent = "# " + " " * (len(text) - len(text.lstrip()))
    return textwrap.wrap(text.strip(), WIDTH, initial_indent=indent, subsequent_indent=indent)


def _line(left: str, right: str) -> str:
    return f"{left:<{BESIDE}}  # {right}" if right else left
