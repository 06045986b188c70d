"""Style: the choices of the docket's style, as fields with their range, default, reason and picture."""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass, replace
from fractions import Fraction
from typing import Any

from tapeline.blocks.cap_ease import CapEase
from tapeline.blocks.sleeve_choices import SleeveLength
from tapeline.docket.choices import Words, read_choices, words_of
from tapeline.docket.cloth import read_cloth
from tapeline.docket.read import GARMENT_KEYS
from tapeline.docket.reader import Reader
from tapeline.lengths import Length
from tapeline.pattern import Choice, Cloth, Corrections, choices_of, idle_in
from tapeline.pattern import Word as PlainWord
from tapeline.styles import STYLES, Style
from tapeline.web.thumbnail import Thumbnail, thumbnail
from tapeline.web.view import View

__all__ = ["Field", "Group", "Word", "choices"]


@dataclass(frozen=True, slots=True)
class Word:
    """A word of the docket, and what it means in numbers."""

    word: str
    means: str


@dataclass(frozen=True, slots=True)
class Field:
    """One choice as it is shown."""

    keys: tuple[str, ...]
    label: str
    value: str
    says: str
    least: str = ""
    most: str = ""
    step: str = ""
    listed: tuple[str, ...] = ()
    """What there is to choose from, where it is a list of names."""
    words: tuple[Word, ...] = ()
    """Where words stand for numbers."""
    own: tuple[Field, ...] = ()
    """The numbers that a word stands for, to be set one by one."""
    picture: Thumbnail | None = None
    changed: bool = False
    """Whether the docket says something else than the style does by itself."""
    part: str = ""
    """Tells a field's id from that of another of the same key."""

    @property
    def name(self) -> str:
        """For ids."""
        return "-".join(self.keys) + self.part


@dataclass(frozen=True, slots=True)
class Group:
    """Choices that belong together."""

    title: str
    fields: tuple[Field, ...]


def choices(view: View) -> list[Group]:
    """All choices of the style, group by group."""
    style, chosen = _as_far_as_read(view)
    surveyed = view.docket.surveyed if view.docket else view.section("garment").get("frame") != "proportional"
    frame = "survey" if surveyed and view.figure.has_survey else "proportional"
    frames = ("survey", "proportional") if view.figure.has_survey else ("proportional",)
    reason = "sizes that are not taped: as the survey expects them, or by the rule of proportion"
    general = Group(
        "Garment",
        (
            Field(("garment", "style"), "Style", style.name, style.says, listed=tuple(STYLES)),
            Field(("garment", "frame"), "Frame", frame, reason, listed=frames),
        ),
    )
    corrections = _groups(view, _corrections(view), Corrections(), ("garment", "corrections"), "Corrections")
    cloth = _groups(view, _cloth(view), Cloth(), ("cloth",), "Cloth")
    return [general, *_groups(view, chosen, style.choices(), ("garment",), style.title), *cloth, *corrections]


def _as_far_as_read(view: View) -> tuple[Style, Any]:
    """The docket's style and choices; while the docket cannot be used, what in them can be, and defaults for the rest.

    A number out of its range must not take away the field in which it is mended.
    """
    if view.docket is not None:
        return view.docket.style, view.docket.choices
    said = view.section("garment").get("style")
    style = STYLES[said] if isinstance(said, str) and said in STYLES else next(iter(STYLES.values()))
    reader = Reader(view.name, ".".join, view.unit)
    return style, read_choices(reader, style.choices(), view.section("garment"), ("garment",), GARMENT_KEYS)


def _corrections(view: View) -> Corrections:
    """What the docket corrects, as far as it can be read."""
    if view.docket is not None:
        return view.docket.corrections
    reader = Reader(view.name, ".".join, view.unit)
    keys = ("garment", "corrections")
    read: Corrections = read_choices(reader, Corrections(), view.section(*keys), keys)
    return read


def _cloth(view: View) -> Cloth:
    """What the docket says of the cloth, as far as it can be read; its width, which need not be known, is left out."""
    if view.docket is not None:
        return replace(view.docket.cloth, width=None)
    return replace(read_cloth(Reader(view.name, ".".join, view.unit), view.section("cloth")), width=None)


def _groups(view: View, value: Any, default: Any, keys: tuple[str, ...], title: str) -> list[Group]:  # noqa: ANN401 - any choices
    own: list[Field] = []
    inside: list[Group] = []
    limits = choices_of(type(value))
    for f in fields(value):
        now, before, path = getattr(value, f.name), getattr(default, f.name), (*keys, f.name)
        if f.name in idle_in(value):
            continue
        one = _field(view, path, now, limits.get(f.name))
        if one is not None:
            own.append(replace(_dressed(view, one), changed=not _same(now, before) or _refused(view, one)))
        elif is_dataclass(now):
            inside += _groups(view, now, before, path, _label(f.name))
    return ([Group(title, tuple(own))] if own else []) + inside


def _field(view: View, path: tuple[str, ...], now: Any, limit: Choice | None) -> Field | None:  # noqa: ANN401 - any choice
    """One choice; None for a table of choices."""
    label = _label(path[-1])
    words = words_of(now)
    if words is not None:
        return _worded(view, path, now, words, limit)
    if isinstance(now, str):
        return Field(path, label, now, label)
    if limit is None or now is None:
        return None
    if isinstance(now, Length):
        return _length(view, path, now.mm, limit)
    return Field(path, label, f"{float(now):g}", limit.says, f"{limit.least:g}", f"{limit.most:g}", "any")


def _worded(view: View, path: tuple[str, ...], now: Any, words: Words, limit: Choice | None) -> Field:  # noqa: ANN401 - any choices
    meant = tuple(Word(word, _means(view, value)) for word, value in words.words.items())
    said = view.section(*path[:-1]).get(path[-1])
    chosen = next((word for word, value in words.words.items() if _same(value, now)), "")
    if view.docket is None and said is not None and not (isinstance(said, str) and said in words.words):
        chosen = ""
    own: tuple[Field, ...] = ()
    if isinstance(now, PlainWord):
        pass  # a word alone: there are no numbers to set
    elif words.from_length is not None and limit is not None:
        length = _length_mm(view, now)
        own = (_dressed(view, replace(_length(view, path, length or 0.0, limit), part="-length")),)
    else:
        limits = choices_of(type(now))
        inner = (
            _field(view, (*path, f.name), getattr(now, f.name), limits.get(f.name))
            for f in fields(now)
            if f.name not in idle_in(now)
        )
        own = tuple(_dressed(view, one) for one in inner if one is not None)
    return Field(path, _label(path[-1]), chosen, limit.says if limit else "", words=meant, own=own)


def _dressed(view: View, one: Field) -> Field:
    """A field with its picture; what is refused stays in it as it was typed."""
    if _refused(view, one):
        one = replace(one, value=str(_said(view, one)))
    picture = thumbnail(view, ".".join(one.keys))
    return replace(one, picture=picture)


def _said(view: View, one: Field) -> Any:  # noqa: ANN401 - whatever the docket says
    return view.section(*one.keys[:-1]).get(one.keys[-1])


def _refused(view: View, one: Field) -> bool:
    """Whether a field's own number may be what keeps the docket from being used."""
    said = _said(view, one)
    is_word = isinstance(said, str) and said[:1].isalpha() and bool(one.part)
    return view.docket is None and not one.words and not is_word and isinstance(said, str | int | float)


def _means(view: View, value: Any) -> str:  # noqa: ANN401 - any choices
    """A word's numbers, for a person."""
    sign, millimetres = view.unit.sign, view.unit.mm
    if isinstance(value, SleeveLength):
        length = _sleeve_mm(view, value)
        share = "the whole arm" if value.share == 1 else f"{value.share} of the arm"
        return share if length is None else f"{share}: {length / millimetres:.1f} {sign}"
    if isinstance(value, PlainWord):
        return value.says
    if isinstance(value, CapEase):
        return "by the sort of the cloth; where that is not said, as is usual for the style"
    said = []
    for f in fields(value):
        number = getattr(value, f.name)
        if isinstance(number, Length) and abs(number.mm) > 1e-9:
            said.append(f"{f.name.replace('_', ' ')} {round(number.mm / millimetres, 2):g} {sign}")
        elif isinstance(number, Fraction | float) and number:
            said.append(f"{f.name.replace('_', ' ')} {number}")
    return ", ".join(said) or "nothing added"


def _length_mm(view: View, value: Any) -> float | None:  # noqa: ANN401 - whatever a word or a length may stand for
    """The length that a word comes to, or that stands in its place."""
    if isinstance(value, SleeveLength):
        return _sleeve_mm(view, value)
    if isinstance(value, CapEase) and value.given is None and view.drafted is not None:
        return next((size.length.mm for size in view.drafted.garment.sizes if size.name == "cap_ease"), None)
    given = getattr(value, "given", None)
    return given.mm if isinstance(given, Length) else None


def _sleeve_mm(view: View, value: SleeveLength) -> float | None:
    if value.given is not None:
        return value.given.mm
    tapes = view.docket.wearer.tapes if view.docket else {}
    return float(value.share) * tapes["arm_length"] if "arm_length" in tapes else None


def _same(one: Any, other: Any) -> bool:  # noqa: ANN401 - any choices
    """Equal but for the names that reading gives its lengths."""
    if isinstance(one, Length) and isinstance(other, Length):
        return abs(one.mm - other.mm) < 1e-9
    if is_dataclass(one) and is_dataclass(other):
        return all(_same(getattr(one, f.name), getattr(other, f.name)) for f in fields(one) if f.compare)
    return bool(one == other)


def _length(view: View, keys: tuple[str, ...], now_mm: float, limit: Choice) -> Field:
    def show(mm: float) -> str:
        return f"{round(mm / view.unit.mm, 3):g}"

    step = "0.1" if view.unit.mm == 10 else "0.0625"
    least, most = show(limit.least * 10), show(limit.most * 10)
    return Field(keys, _label(keys[-1]), show(now_mm), limit.says, least, most, step)


def _label(name: str) -> str:
    return name.replace("_", " ").capitalize()
