"""A style's choices, read by walking its dataclass: a new style needs no reader of its own."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, fields, is_dataclass, replace
from fractions import Fraction
from typing import Any

from tapeline.blocks.button_band import BAND_CLOSURES, BandClosure
from tapeline.blocks.cap_ease import CapEase
from tapeline.blocks.collar import COLLARS, CollarChoices
from tapeline.blocks.front_edge import FRONT_EDGES, FrontEdge
from tapeline.blocks.hems import HEM_SHAPES, HemShape
from tapeline.blocks.looseness import LOOSENESS, Looseness
from tapeline.blocks.neck_shapes import NECK_SHAPES, NeckShape
from tapeline.blocks.neckband import RIB_COLLARS, RibCollar
from tapeline.blocks.parts import YOKES, YokeShape
from tapeline.blocks.sleeve_choices import CAPS, SLEEVE_LENGTHS, SLEEVE_SHAPES, CapShape, SleeveLength, SleeveShape
from tapeline.blocks.sleeve_fullness import SLEEVE_ENDS, SLEEVE_HEADS, SleeveEnd, SleeveHead
from tapeline.docket.places import Keys
from tapeline.docket.reader import Reader, as_typed, dotted
from tapeline.lengths import Length
from tapeline.pattern import Choice, Word, choices_of

__all__ = ["WORDS", "Words", "named", "read_choices", "words_of"]


@dataclass(frozen=True, slots=True)
class Words:
    """Words that stand for a group of choices: `looseness = "slight"`."""

    words: Mapping[str, Any]
    from_length: Callable[[Length], Any] | None = None
    """What a length in place of a word means; where there is none, numbers stand in a table."""

    def word_for(self, value: object) -> str | None:
        """The word that stands for a value."""
        return next((word for word, meant in self.words.items() if meant == value), None)


WORDS: dict[type, Words] = {
    Looseness: Words(LOOSENESS),
    NeckShape: Words(NECK_SHAPES),
    HemShape: Words(HEM_SHAPES),
    RibCollar: Words(RIB_COLLARS),
    FrontEdge: Words(FRONT_EDGES),
    BandClosure: Words(BAND_CLOSURES),
    CollarChoices: Words(COLLARS),
    YokeShape: Words(YOKES),
    CapShape: Words(CAPS),
    SleeveShape: Words(SLEEVE_SHAPES),
    SleeveHead: Words(SLEEVE_HEADS),
    SleeveEnd: Words(SLEEVE_ENDS),
    SleeveLength: Words(SLEEVE_LENGTHS, lambda length: SleeveLength(given=length)),
    CapEase: Words({"by-cloth": CapEase()}, lambda length: CapEase(given=length)),
}


def words_of(value: object) -> Words | None:
    """The words one of which stands for a value; None for a value that has none."""
    if isinstance(value, Word):
        return Words({str(word): word for word in type(value)})
    return WORDS.get(type(value))


def read_choices(reader: Reader, base: Any, table: Mapping[str, Any], keys: Keys, besides: Iterable[str] = ()) -> Any:  # noqa: ANN401 - any style's own dataclass
    """A choices dataclass with what the table says in place of its defaults.

    Args:
        reader: Keeps what is wrong.
        base: The defaults.
        table: The docket's.
        keys: Where the table stands.
        besides: Keys of the table that are read elsewhere.
    """
    names = [f.name for f in fields(base)]
    reader.unknown(table, keys, [*names, *besides])
    ranges = choices_of(type(base))
    changes = {}
    for name in names:
        if name in table:
            read = _value(reader, getattr(base, name), table[name], (*keys, name), ranges.get(name))
            if read is not None:
                changes[name] = read
    return replace(base, **changes)


def _value(reader: Reader, now: object, value: object, keys: Keys, limits: Choice | None) -> object:
    if isinstance(now, Length):
        return reader.length(value, keys, _limited(limits, keys))
    if isinstance(now, str):
        return reader.kind(value, keys, type(now)) if isinstance(now, Word) else reader.text(value, keys)
    words = words_of(now)
    if isinstance(now, int | float | Fraction):
        return reader.number(value, keys, _limited(limits, keys))
    if words is not None and not isinstance(value, Mapping):
        read = _word(reader, words, value, keys, limits)
        # What a style does besides its word stays with it: the cap ease that is usual for it.
        return now if read == now else read
    if not isinstance(value, Mapping) or not is_dataclass(now) or (words and words.from_length):
        known = f"one of {', '.join(words.words)}" if words else "a table of its own: { ... }"
        reader.refuse("docket-type", keys, f"{dotted(keys)} is {as_typed(value)}; it is {known}")
        return None
    return read_choices(reader, now, value, keys)


def _word(reader: Reader, words: Words, value: object, keys: Keys, limits: Choice | None) -> object:
    looks_like_word = isinstance(value, str) and value.strip()[:1].isalpha()
    if words.from_length is not None and not looks_like_word and not isinstance(value, bool | list):
        length = reader.length(value, keys, _limited(limits, keys))
        return None if length is None else words.from_length(length)
    otherwise = f", or {'a length' if words.from_length else 'numbers in { ... }'}"
    word = reader.word(value, keys, words.words, otherwise=otherwise)
    return None if word is None else words.words[word]


def _limited(limits: Choice | None, keys: Keys) -> Choice:
    if limits is None:
        raise TypeError(f"the choice {dotted(keys)} states no range")  # a fault of the style's page
    return limits


def named(value: Any, keys: Keys = ()) -> Any:  # noqa: ANN401 - any style's own dataclass
    """The same choices with every length under its docket name, so that formulas say where it is from.

    A choice that stands alone is called after its table: `garment_waist` is no tape.

    >>> from tapeline.styles import STYLES
    >>> choices = named(STYLES["tee"].choices())
    >>> choices.waist.name, choices.looseness.side.name, choices.sleeve.cap.extra.name
    ('garment_waist', 'looseness_side', 'sleeve_cap_extra')
    """
    if isinstance(value, Length):
        return value.named("_".join(keys if len(keys) > 1 else ("garment", *keys)))
    if isinstance(value, CapEase):
        value = replace(value, usual=named(value.usual, (*keys, "usual")))
    if isinstance(value, SleeveLength | CapEase):
        return value if value.given is None else replace(value, given=named(value.given, keys))
    if not is_dataclass(value) or isinstance(value, type):
        return value
    return replace(value, **{f.name: named(getattr(value, f.name), (*keys, f.name)) for f in fields(value)})
