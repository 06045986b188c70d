"""The docket that `tapeline new` writes: it reads back as the defaults, whatever is taken from behind its #."""

from __future__ import annotations

import re
import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.docket import Docket, docket_from_text, template
from tapeline.docket.choices import named
from tapeline.docket.hand_sizes import HAND_SIZES
from tapeline.finish import FinishChoices
from tapeline.measures import Figure, tapes_of
from tapeline.pattern import Cloth
from tapeline.styles import STYLES, Style
from tapeline.units import Unit

styles = st.sampled_from(list(STYLES.values()))
units = st.sampled_from(list(Unit))
DEFAULT = re.compile(r"^# ([a-z_.]+ = [^#\s][^#\n]*)", re.MULTILINE)
"""A line with a default behind its #; a tape that is still open has nothing after its `=`."""


def read(text: str) -> Docket:
    """A template as a docket."""
    return docket_from_text(text, "new.toml")


def is_default(docket: Docket) -> bool:
    """Whether a docket chooses nothing."""
    return (docket.choices, docket.cloth, docket.finish, docket.paper, dict(docket.by_hand)) == (
        named(docket.style.choices()),
        Cloth(),
        FinishChoices(),
        "A4",
        {},
    )


@given(styles, units, st.sampled_from(["88", "M", "110"]), st.sampled_from(["", "Marit", 'a "b" \\ c', "Ünïcøde"]))
def test_a_new_docket_reads_back_as_the_defaults(style: Style, unit: Unit, size: str, name: str) -> None:
    """What is chosen stands in it, and nothing else is."""
    docket = read(template(style, unit, size, Figure.WOMAN, name))
    assert is_default(docket)
    assert (docket.style, docket.unit, docket.surveyed) == (style, unit, True)
    assert docket.wearer.name == (name or f"Size {size}")


@pytest.mark.parametrize("style", STYLES.values(), ids=list(STYLES))
def test_every_default_behind_a_sign_is_the_default(style: Style) -> None:
    """With the # taken away a line changes nothing, each on its own: in cm the numbers are exact."""
    text = template(style, Unit.CM, "88")
    lines = DEFAULT.findall(text)
    assert len(lines) > 10
    for line in map(str.rstrip, lines):
        key = line.partition(" = ")[0]
        if key == "name":
            continue
        # A word and the numbers that stand for it are one or the other.
        without = re.sub(rf"^{re.escape(key)} = .*$", "", text, flags=re.MULTILINE)
        docket = read(without.replace(f"# {line}", line, 1))
        if line.startswith("allowance = {"):
            assert docket.finish.allowance_mm == 10
        elif key == "size":
            assert docket.wearer.name == "Size M"
        else:
            assert is_default(docket), line


@pytest.mark.parametrize("figure", Figure)
@pytest.mark.parametrize("unit", Unit)
def test_every_tape_and_size_is_listed(figure: Figure, unit: Unit) -> None:
    """Each tape of the figure has its line and how to take it; each size that can be set by hand has its range."""
    text = template(STYLES["tee"], unit, None, figure)
    assert tomllib.loads(text)["wearer"]["figure"] == figure
    for tape in tapes_of(figure):
        if figure is Figure.CHILD and tape.name == "chest":
            continue  # the other word for the bust
        assert f"\n# {tape.name} =\n" in text
        assert tape.title in text
    for name in HAND_SIZES:
        assert f"\n# {name} = " in text


@pytest.mark.parametrize("figure", Figure)
def test_with_its_tapes_filled_in_it_is_a_docket(figure: Figure) -> None:
    """What a maker does with it: take the # away and write the number."""
    text = template(STYLES["tee"], Unit.INCH, None, figure)
    for tape in tapes_of(figure):
        if tape.required:
            middle = (tape.limits[figure].low + tape.limits[figure].high) / 2
            text = text.replace(f"\n# {tape.name} =\n", f'\n{tape.name} = "{middle} mm"\n')
    docket = read(text)
    assert docket.wearer.figure is figure
    assert len(docket.wearer.tapes) == 8


def test_its_lines_are_not_longer_than_a_window() -> None:
    """It is read in an editor, beside the wearer."""
    for style in STYLES.values():
        for unit in Unit:
            assert max(map(len, template(style, unit).splitlines())) <= 140
