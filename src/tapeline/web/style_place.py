"""Style: the choices of the docket's style, as fields with their range, default and reason."""

from __future__ import annotations

from dataclasses import dataclass, fields, is_dataclass, replace
from fractions import Fraction
from typing import Any

from tapeline.docket.choices import WORDS, read_choices
from tapeline.docket.read import GARMENT_KEYS
from tapeline.docket.reader import Reader
from tapeline.lengths import Length
from tapeline.pattern import Choice, choices_of
from tapeline.styles import STYLES, Style
from tapeline.web.thumbnail import Thumbnail, thumbnail
from tapeline.web.view import View

__all__ = ["Field", "Group", "choices"]


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
    words: tuple[str, ...] = ()
    """Where there are words to choose from."""
    picture: Thumbnail | None = None
    typed: bool = False
    """Whether the docket says it, rather than the default."""

    @property
    def name(self) -> str:
        """For ids."""
        return "-".join(self.keys)


@dataclass(frozen=True, slots=True)
class Group:
    """Choices that belong together."""

    title: str
    fields: tuple[Field, ...]


def choices(view: View) -> list[Group]:
    """All choices of the style, group by group."""
    style, chosen = _as_far_as_read(view)
    surveyed = view.docket.surveyed if view.docket else view.section("garment").get("frame") != "proportional"
    general = Group(
        "Garment",
        (
            Field(("garment", "style"), "Style", style.name, style.says, words=tuple(STYLES)),
            Field(
                ("garment", "frame"),
                "Frame",
                "survey" if surveyed and view.figure.has_survey else "proportional",
                "sizes that are not taped: as the survey expects them, or by the rule of proportion",
                words=("survey", "proportional") if view.figure.has_survey else ("proportional",),
            ),
        ),
    )
    groups = [general, *_groups(view, chosen, ("garment",), style.title)]
    return [Group(group.title, tuple(_dressed(view, one) for one in group.fields)) for group in groups]


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


def _dressed(view: View, one: Field) -> Field:
    """A field with its picture, and with whether the docket says it."""
    said = view.section(*one.keys[:-1]).get(one.keys[-1])
    typed = said is not None
    if view.docket is None and not one.words and isinstance(said, str | int | float):
        one = replace(one, value=str(said))
    picture = thumbnail(view.drafted.garment, ".".join(one.keys)) if view.drafted else None
    return replace(one, picture=picture, typed=typed)


def _groups(view: View, value: Any, keys: tuple[str, ...], title: str) -> list[Group]:  # noqa: ANN401 - any choices
    own: list[Field] = []
    inside: list[Group] = []
    limits = choices_of(type(value))
    for f in fields(value):
        now, path, label = getattr(value, f.name), (*keys, f.name), f.name.replace("_", " ")
        words = WORDS.get(type(now))
        if words is not None:
            word = words.word_for(_plain(now, words))
            says = limits[f.name].says if f.name in limits else f"{label}, by a word; its numbers are below"
            own.append(Field(path, label.capitalize(), word or "", says, words=tuple(words.words)))
        if isinstance(now, Length):
            own.append(_length(view, path, label, now, limits[f.name]))
        elif isinstance(now, int | float | Fraction):
            limit = limits[f.name]
            own.append(
                Field(
                    path,
                    label.capitalize(),
                    f"{float(now):g}",
                    limit.says,
                    f"{limit.least:g}",
                    f"{limit.most:g}",
                    "any",
                )
            )
        elif isinstance(now, str):
            own.append(Field(path, label.capitalize(), now, label))
        elif is_dataclass(now) and (words is None or words.from_length is None):
            inside += _groups(view, now, path, label.capitalize())
    return ([Group(title, tuple(own))] if own else []) + inside


def _plain(now: Any, words: Any) -> Any:  # noqa: ANN401 - any choices
    """The value without the names that reading gives its lengths, to be found among the words."""
    return next((meant for meant in words.words.values() if _same(meant, now)), now)


def _same(one: Any, other: Any) -> bool:  # noqa: ANN401 - any choices
    if isinstance(one, Length) and isinstance(other, Length):
        return abs(one.mm - other.mm) < 1e-9
    if is_dataclass(one) and is_dataclass(other):
        return all(_same(getattr(one, f.name), getattr(other, f.name)) for f in fields(one))
    return bool(one == other)


def _length(view: View, keys: tuple[str, ...], label: str, now: Length, limit: Choice) -> Field:
    def show(mm: float) -> str:
        return f"{round(mm / view.unit.mm, 3):g}"

    step = "0.1" if view.unit.mm == 10 else "0.0625"
    return Field(
        keys, label.capitalize(), show(now.mm), limit.says, show(limit.least * 10), show(limit.most * 10), step
    )
