"""Changing one value after another gives the text that changing each in a text just read gives."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from tapeline.docket.edit import _LAST, with_value

TEXT = (Path(__file__).parents[2] / "examples" / "tee.toml").read_text(encoding="utf-8")
KEYS = (
    ("wearer", "tapes", "bust"),
    ("wearer", "tapes", "new_one"),
    ("wearer", "name"),
    ("garment", "neckline", "widen"),
    ("garment", "sleeve"),
    ("finish", "allowance", "default"),
    ("cloth", "stretch"),
)
EDITS = st.lists(st.tuples(st.sampled_from(KEYS), st.sampled_from(("1", "2.5", "long", "", None))), max_size=8)


@given(EDITS)
def test_a_run_of_changes_is_written_as_one_by_one(edits: list[tuple[tuple[str, ...], str | None]]) -> None:
    """What is kept from the change before never shows: the text is the same without it."""
    made = [TEXT]
    for keys, value in edits:
        with suppress(TypeError, AttributeError):  # a word that is no table holds no key: the page never asks for that
            made.append(with_value(made[-1], keys, value))
    fresh = [TEXT]
    for keys, value in edits:
        _LAST.clear()
        with suppress(TypeError, AttributeError):
            fresh.append(with_value(fresh[-1], keys, value))
    assert made == fresh
