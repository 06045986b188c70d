"""The places of keys: every key of a docket is found at its own line, whatever way it is written."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.docket.places import Keys, places

EXAMPLES = sorted((Path(__file__).resolve().parents[2] / "examples").glob("*.toml"))

TEXT = '''# hip = 1
allow = [
  "tape-unlikely:waist",  # ] not the end
  'tape-range',
]
[wearer]
name = "a \\" # ] } = b"   # remark
figure = 'man'
  unit="cm"
[ wearer . tapes ]
"hip" = 98
'bust point' = "1 # 2"
[garment]
neckline = { widen = 2, lower_front = "3 cm", deep.er = { a = 1 } }
sleeve.length = """
long
"""
sleeve . "cap" = { share = 0.3 }
[[rows]]
a = 1
[[rows]]
a = 2
'''


@pytest.mark.parametrize(
    ("keys", "line", "text"),
    [
        (("allow",), 2, "allow = [ "),
        (("wearer",), 6, "[wearer]"),
        (("wearer", "name"), 7, 'name = "a \\" # ] } = b"'),
        (("wearer", "unit"), 9, 'unit="cm"'),
        (("wearer", "tapes"), 10, "[ wearer . tapes ]"),
        (("wearer", "tapes", "hip"), 11, '"hip" = 98'),
        (("wearer", "tapes", "bust point"), 12, "'bust point' = \"1 # 2\""),
        (("garment", "neckline", "widen"), 14, "widen = 2"),
        (("garment", "neckline", "deep", "er", "a"), 14, "a = 1"),
        (("garment", "sleeve", "length"), 15, 'sleeve.length = """ long """'),
        (("garment", "sleeve", "cap", "share"), 18, "share = 0.3"),
        (("rows", "1", "a"), 22, "a = 2"),
    ],
)
@pytest.mark.parametrize("ends", ["\n", "\r\n"])
def test_a_key_is_found_at_its_line(keys: Keys, line: int, text: str, ends: str) -> None:
    """Quoted, dotted, inside an inline table, after a value of many lines: the line is that of the key."""
    assert places("a.toml", TEXT.replace("\n", ends)).where(keys).startswith(f"a.toml, line {line}: {text}")


def test_a_key_that_is_nowhere_is_named_alone() -> None:
    """Where there is no line to show, none is made up."""
    assert places("a.toml", TEXT).where(("cloth", "width")) == "a.toml: cloth.width"


def test_a_table_that_is_only_opened_by_its_keys_is_found_at_the_first_of_them() -> None:
    """`sleeve.length = ...` opens the table `sleeve` without a line of its own."""
    assert places("a.toml", TEXT).where(("garment", "sleeve")).startswith("a.toml, line 15: sleeve.length")


def test_a_long_line_is_cut_and_a_strange_sign_is_shown_as_a_question() -> None:
    """What stands in a docket cannot fill the screen, nor move its cursor."""
    where = places("a.toml", f'name = "{"x" * 500}"\nkind = "\\u001b"\nraw = \'\ttab\'').where
    assert len(where(("name",))) < 100
    assert where(("raw",)).isprintable()


def paths(table: Any, above: Keys = ()) -> Iterator[Keys]:
    """Every way to a value or a table."""
    for key, value in table.items():
        yield (*above, key)
        if isinstance(value, dict):
            yield from paths(value, (*above, key))


@pytest.mark.parametrize("example", EXAMPLES, ids=[path.stem for path in EXAMPLES])
def test_every_key_of_the_examples_is_found(example: Path) -> None:
    """TOML's own reader and the search for lines see the same keys."""
    text = example.read_text(encoding="utf-8")
    found = places("a.toml", text)
    lines = text.split("\n")
    for keys in paths(tomllib.loads(text)):
        place = found.where(keys)
        assert place.startswith("a.toml, line "), keys
        number = int(place.partition("line ")[2].partition(":")[0])
        assert keys[-1] in lines[number - 1]


NAMES = st.sampled_from(["a", "b-c", "d_1", "é f", 'g"h', "i.j", "k#l", "m=n"])
VALUES = st.one_of(
    st.integers(-9, 9).map(str),
    st.sampled_from(["true", "1.5", "nan", "[1, [2, '#'], {x = 1}]", '"a # b"', "'c = d'", "1979-05-27"]),
)


def quoted(name: str) -> str:
    """A key as TOML takes it."""
    return (
        name
        if name.replace("-", "").replace("_", "").isascii() and name.replace("-", "").replace("_", "").isalnum()
        else ("'" + name + "'")
    )


@given(st.dictionaries(NAMES, st.dictionaries(NAMES, VALUES, min_size=1), min_size=1), st.booleans())
def test_random_tables_are_found_line_by_line(tables: dict[str, dict[str, str]], spread: bool) -> None:
    """Each pair of each table is found at the line on which it was written."""
    lines = ["# a remark"]
    expected: dict[Keys, int] = {}
    for table, pairs in tables.items():
        if spread:
            lines.append(f"[{quoted(table)}] # = 'not a key")
        for key, value in pairs.items():
            lines.append(f"  {quoted(key)} = {value}" if spread else f"{quoted(table)} . {quoted(key)}={value} # ]")
            expected[table, key] = len(lines)
    text = "\n".join(lines)
    tomllib.loads(text)
    where = places("a.toml", text).where
    assert {keys: int(where(keys).split("line ")[1].split(":")[0]) for keys in expected} == expected


@given(st.text(st.sampled_from("[]{}=\"'#.,\n\\ ab1"), max_size=60))
def test_any_text_is_survived(text: str) -> None:
    """The search for lines never fails: what it cannot follow, it leaves out."""
    assert places("a.toml", text).where(("a",))
