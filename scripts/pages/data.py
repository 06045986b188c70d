"""docs/reference/data.md: what stands in the JSON of a garment, from its schema."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from scripts.pages.markdown import NOTICE, table
from tapeline.export import schema

__all__ = ["page"]


def page() -> str:
    """The page."""
    whole = schema()
    return "\n".join(
        [
            NOTICE,
            "# The data of a garment (JSON)\n",
            (
                "`tapeline draft DOCKET --json` prints one object; each line of "
                "`tapeline batch ORDERS.csv --json-lines` is "
                "one more, with the order's `row` and `name` before it.\n"
                f"{whole['description']}\n"
                "The schema itself is `tapeline.schema.json` in the package `tapeline.export`; "
                "`tapeline.export.schema()` "
                "gives it to Python.\n"
                "Every object is checked against it in the tests.\n"
            ),
            table(["where", "what", "notes"], list(_rows(whole, whole, ""))),
        ]
    )


def _rows(part: Mapping[str, Any], whole: Mapping[str, Any], above: str) -> Iterator[list[str]]:
    for name, inside in part.get("properties", {}).items():
        yield from _row(inside, whole, f"{above}.{name}" if above else name)


def _row(inside: Mapping[str, Any], whole: Mapping[str, Any], where: str) -> Iterator[list[str]]:
    said = inside.get("description", "")
    inside = _met(inside, whole)
    yield [f"`{where}`", _what(inside), said or inside.get("description", "")]
    yield from _rows(inside, whole, where)
    each = inside.get("additionalProperties")
    if isinstance(each, Mapping):
        yield from _rows(_met(each, whole), whole, f"{where}.NAME")
    items = inside.get("items")
    if isinstance(items, Mapping):
        yield from _rows(_met(items, whole), whole, f"{where}[]")


def _met(part: Mapping[str, Any], whole: Mapping[str, Any]) -> Mapping[str, Any]:
    """A part of the schema, found where it is defined."""
    if "$ref" not in part:
        return part
    found = whole
    for key in part["$ref"].removeprefix("#/").split("/"):
        found = found[key]
    return {**found, "description": found.get("description", "")}


def _what(inside: Mapping[str, Any]) -> str:
    if "const" in inside:
        return f"always `{inside['const']}`"
    if "enum" in inside:
        return "one of " + ", ".join(map(str, inside["enum"]))
    kind = inside.get("type", "")
    return " or ".join(kind) if isinstance(kind, list) else str(kind)
