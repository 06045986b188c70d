"""The docket's wearer: whose tapes, in which unit, and the tapes or a standard size."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tapeline.docket.places import Keys
from tapeline.docket.reader import NOTHING_DONE, Reader, as_typed, sentences
from tapeline.measures import TAPES, Figure, Wearer, size_wearer, wearer_problems
from tapeline.problems import InputError, Problem, Severity, closest
from tapeline.units import Unit

__all__ = ["ALLOWABLE", "read_allow", "read_wearer"]

KEYS = ("name", "figure", "unit", "size", "tapes")
TAPES_AT = ("wearer", "tapes")
ALLOWABLE = ("tape-range", "tape-unlikely", "tape-doubt", "tapes-swapped")
"""What a maker who has looked at it may let pass."""


def read_wearer(reader: Reader, docket: Mapping[str, Any], allow: frozenset[str]) -> Wearer | None:
    """The wearer, or None when something keeps the tapes from being one. Sets the reader's unit first of all."""
    table = reader.table(docket, ("wearer",))
    reader.unknown(table, ("wearer",), KEYS)
    reader.unit = reader.kind(table.get("unit", "cm"), ("wearer", "unit"), Unit) or Unit.CM
    figure = _figure(reader, table)
    name = reader.text(table["name"], ("wearer", "name")) if "name" in table else ""
    tapes, unread = _tapes(reader, reader.table(table, TAPES_AT))
    if figure is None:
        return None
    standard = _standard(reader, table, figure)
    if standard is None and "size" in table:
        return None
    together = {**(standard.tapes if standard else {}), **tapes}
    found = _problems(reader, figure, together, unread, allow)
    if unread or name is None or any(problem.severity is Severity.ERROR for problem in found):
        return None
    made_from = standard.made_from if standard else ""
    if standard and tapes:
        made_from += f"; taped: {', '.join(tapes)}"
    return Wearer(
        name or (standard.name if standard else "the wearer"), figure, together, allow, reader.unit, made_from
    )


def read_allow(reader: Reader, docket: Mapping[str, Any]) -> frozenset[str]:
    """What the maker lets pass: a list of codes, each alone or with the tape it is for."""
    value = docket.get("allow", [])
    entries = value.replace(",", " ").split() if isinstance(value, str) else value
    if not isinstance(entries, list) or not all(isinstance(entry, str) for entry in entries):
        reader.refuse(
            "docket-type",
            ("allow",),
            f"allow is {as_typed(value)}; it is a list",
            'write allow = ["tape-unlikely:waist"]',
        )
        return frozenset()
    for entry in entries:
        code, colon, tape = entry.partition(":")
        if code not in ALLOWABLE:
            reader.refuse("allow-unknown", ("allow",), f"{code} cannot be allowed", closest(code, ALLOWABLE))
        elif colon and tape not in TAPES:
            reader.refuse("allow-unknown", ("allow",), f"{entry} is for a tape that there is not", closest(tape, TAPES))
    return frozenset(entries)


def _figure(reader: Reader, table: Mapping[str, Any]) -> Figure | None:
    if "figure" in table:
        return reader.kind(table["figure"], ("wearer", "figure"), Figure)
    says = "the docket does not say whose tapes these are"
    reader.refuse("figure-missing", ("wearer",), says, 'write figure = "woman", "man" or "child" below [wearer]')
    return None


def _standard(reader: Reader, table: Mapping[str, Any], figure: Figure) -> Wearer | None:
    keys: Keys = ("wearer", "size")
    value = table.get("size")
    if value is None:
        return None
    if isinstance(value, bool) or not isinstance(value, str | int):
        hint = 'write size = "88", or a letter code such as size = "M"'
        reader.refuse("docket-type", keys, f"wearer.size is {as_typed(value)}; it is a label", hint)
        return None
    try:
        return size_wearer(str(value).strip().upper(), figure, reader.unit)
    except InputError as error:
        reader.keep(error, keys)
        return None


def _tapes(reader: Reader, table: Mapping[str, Any]) -> tuple[dict[str, float], list[str]]:
    """Tapes as read, and the names of those that could not be; an unknown name is read as a length, to be told of."""
    read, unread = {}, []
    for name, value in table.items():
        if name not in TAPES:
            read[name] = 0.0
            continue
        keys = (*TAPES_AT, name)
        if not reader.plain(value, keys):
            unread.append(name)
            continue
        try:
            read[name] = TAPES[name].parse(value, reader.unit)
        except InputError as error:
            reader.keep_unread(error, keys)
            unread.append(name)
    return read, unread


def _problems(
    reader: Reader, figure: Figure, tapes: Mapping[str, float], unread: list[str], allow: frozenset[str]
) -> list[Problem]:
    """What measures says of the tapes.

    One that could not be read has been spoken of: it is neither missing nor held against the others.
    """
    stand_in = {
        name: (limits.low + limits.high) / 2
        for name in unread
        if (limits := TAPES[name].limits.get(figure)) is not None
    }
    found = [
        problem
        for problem in wearer_problems(figure, {**tapes, **stand_in}, reader.unit, allow)
        if not (unread and problem.code == "tapes-swapped")
    ]
    for problem in found:
        keys = ("wearer", *problem.where.split("."))
        hint = sentences(problem.hint, NOTHING_DONE if problem.severity is Severity.ERROR else "")
        reader.problems.append(Problem(problem.code, problem.severity, problem.says, reader.where(keys), hint))
    return found
