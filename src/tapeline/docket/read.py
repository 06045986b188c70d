"""Reading a docket: from a file, a text or a table of values; everything wrong is said at once, worst first."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from tapeline.docket.choices import named, read_choices
from tapeline.docket.cloth import read_cloth
from tapeline.docket.cutter import read_tools
from tapeline.docket.docket import Docket
from tapeline.docket.file import docket_text, toml_table
from tapeline.docket.finish import read_finish, read_paper
from tapeline.docket.hand_sizes import HAND_SIZES
from tapeline.docket.lay import read_lay
from tapeline.docket.places import Keys, places, printable
from tapeline.docket.reader import Reader, dotted
from tapeline.docket.wearer import read_allow, read_wearer
from tapeline.measures import Figure
from tapeline.pattern import Corrections
from tapeline.problems import InputError, Problem, Severity
from tapeline.styles import STYLES, Style

__all__ = ["docket_from", "docket_from_text", "read_docket"]

TABLES = ("wearer", "garment", "cloth", "finish", "cutter", "lay", "allow")
GARMENT_KEYS = ("style", "frame", "sizes", "corrections")
FRAMES = ("survey", "proportional")


def read_docket(path: Path | str) -> Docket:
    """A docket's file.

    Raises:
        InputError: With all that is wrong with the file, or with the docket in it.
    """
    path = Path(path)
    return docket_from_text(docket_text(path), printable(path.name))


def docket_from_text(text: str, name: str = "docket") -> Docket:
    """A docket written as TOML.

    >>> docket = docket_from_text('wearer = { figure = "woman", size = "88" }')
    >>> docket.wearer.name, docket.style.name, docket.surveyed, docket.paper
    ('Size 88', 'tee', True, 'A4')

    Raises:
        InputError: With all that is wrong with it.
    """
    table = toml_table(text, name)
    return docket_from(table, name, places(name, text).where)


def docket_from(table: Mapping[str, Any], name: str, where: Callable[[Keys], str] | None = None) -> Docket:
    """A docket from tables of values, as TOML or JSON would hold them.

    Args:
        table: `{"wearer": {...}, "garment": {...}}`.
        name: Of the file or the order, for words on the pieces and in reports.
        where: Says where a key stands; the name and the key unless given.

    Raises:
        InputError: With all that is wrong with it.
    """
    reader = Reader(name, where or (lambda keys: f"{name}: {dotted(keys)}"))
    reader.unknown(table, (), TABLES)
    allow = read_allow(reader, table)
    wearer = read_wearer(reader, table, allow)
    garment = reader.table(table, ("garment",))
    style = _style(reader, garment)
    figure = wearer.figure if wearer else _figure(table)
    surveyed = _surveyed(reader, garment, figure)
    by_hand = _by_hand(reader, garment)
    corrections = _corrections(reader, garment)
    choices = read_choices(reader, style.choices(), garment, ("garment",), GARMENT_KEYS) if style else None
    cloth = read_cloth(reader, reader.table(table, ("cloth",)))
    ending = reader.table(table, ("finish",))
    finish, paper = read_finish(reader, ending), read_paper(reader, ending)
    tools = read_tools(reader, reader.table(table, ("cutter",)))
    lay = read_lay(reader, reader.table(table, ("lay",)), cloth)
    if wearer is None or style is None or any(p.severity is Severity.ERROR for p in reader.problems):
        raise InputError(reader.problems)
    if wearer.made_from:
        says = f"the tapes of {wearer.name} are not of a person: {wearer.made_from}"
        reader.problems.append(Problem("size-standard", Severity.NOTE, says, reader.where(("wearer", "size"))))
    return Docket(
        name=name,
        wearer=wearer,
        style=style,
        choices=named(choices),
        surveyed=surveyed,
        by_hand=by_hand,
        corrections=corrections,
        cloth=cloth,
        finish=finish,
        paper=paper,
        lay=lay,
        allow=allow,
        table=table,
        where=reader.where,
        notes=tuple(reader.problems),
        tools=tools,
    )


def _figure(table: Mapping[str, Any]) -> Figure | None:
    """What is said of the figure, when the rest of the wearer could not be read."""
    wearer = table.get("wearer")
    said = wearer.get("figure") if isinstance(wearer, Mapping) else None
    return Figure(said) if said in list(Figure) else None


def _style(reader: Reader, garment: Mapping[str, Any]) -> Style | None:
    """The style; for a word that is none the one that was probably meant, so that its choices are looked at as well."""
    value = garment.get("style", "tee")
    word = reader.word(value, ("garment", "style"), STYLES, "style-unknown")
    if word is None:
        word = next(iter(get_close_matches(str(value), STYLES, n=1)), "")
    return STYLES.get(word)


def _surveyed(reader: Reader, garment: Mapping[str, Any], figure: Figure | None) -> bool:
    has_survey = figure is None or figure.has_survey
    if "frame" not in garment:
        return has_survey
    keys: Keys = ("garment", "frame")
    surveyed = reader.word(garment["frame"], keys, FRAMES) == "survey"
    if surveyed and not has_survey:
        says = f"there is no survey for the figure {figure}, so its frame cannot follow one"
        reader.refuse("frame-without-survey", keys, says, 'write frame = "proportional", or leave frame out')
    return surveyed


def _corrections(reader: Reader, garment: Mapping[str, Any]) -> Corrections:
    keys: Keys = ("garment", "corrections")
    read: Corrections = read_choices(reader, Corrections(), reader.table(garment, keys), keys)
    return read


def _by_hand(reader: Reader, garment: Mapping[str, Any]) -> dict[str, float]:
    keys: Keys = ("garment", "sizes")
    table = reader.table(garment, keys)
    reader.unknown(table, keys, HAND_SIZES)
    read = {
        name: reader.length(table[name], (*keys, name), limits) for name, limits in HAND_SIZES.items() if name in table
    }
    return {name: length.mm for name, length in read.items() if length is not None}
