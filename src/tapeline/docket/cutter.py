"""The docket's tools of a cutter: a name the maker likes, a colour, and the lines it follows."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from tapeline.docket.places import Keys
from tapeline.docket.reader import Reader, as_typed
from tapeline.finish.tools import USUAL_TOOLS, Lines, Tool
from tapeline.problems import closest

__all__ = ["read_tools"]

KEYS = ("tools",)
MOST_TOOLS = 12
_NAME = re.compile(r"[a-z][a-z0-9_-]{0,30}")
_COLOUR = re.compile(r"#[0-9a-f]{6}")


def read_tools(reader: Reader, cutter: Mapping[str, Any]) -> tuple[Tool, ...]:
    """The tools, in the order in which they work; the usual ones where none are named.

    Keeps `cutter-tool` for a name, a colour or a line that is none, and for what two tools would share.
    """
    reader.unknown(cutter, ("cutter",), KEYS)
    if "tools" not in cutter:
        return USUAL_TOOLS
    table = reader.table(cutter, ("cutter", "tools"))
    if len(table) > MOST_TOOLS:
        says = f"{len(table)} tools are named, {MOST_TOOLS} are allowed"
        reader.refuse("cutter-tool", ("cutter", "tools"), says, "leave out those that draw nothing")
    tools = []
    taken: dict[str, str] = {}
    for name, value in list(table.items())[:MOST_TOOLS]:
        tool = _tool(reader, name, value, taken)
        if tool is not None:
            tools.append(tool)
    if tools and not any(Lines.CUT in tool.lines for tool in tools):
        says = "no tool follows the cut line"
        reader.refuse("cutter-tool", ("cutter", "tools"), says, 'give one of them lines = ["cut", "notch"]')
    return tuple(tools) or USUAL_TOOLS


def _tool(  # noqa: PLR0911 - one way out for each thing that can be wrong
    reader: Reader, name: str, value: object, taken: dict[str, str]
) -> Tool | None:
    """One tool; `taken` says which tool has a colour or a kind of line already."""
    keys: Keys = ("cutter", "tools", name)

    def refuse(says: str, hint: str) -> None:
        reader.refuse("cutter-tool", keys, says, hint)

    if not _NAME.fullmatch(name):
        refuse(f"{name} is no name for a tool", "small letters, figures, _ and -, a letter first: knife, pen, score_2")
        return None
    if not isinstance(value, Mapping):
        refuse(f"the tool {name} is {as_typed(value)}", 'write { colour = "#ff0000", lines = ["cut", "notch"] }')
        return None
    reader.unknown(value, keys, ("colour", "lines"))
    colour, lines = value.get("colour"), value.get("lines")
    if not isinstance(colour, str) or not _COLOUR.fullmatch(colour.lower()):
        shown = "not said" if colour is None else as_typed(colour)
        refuse(f"the colour of {name} is {shown}", 'six figures from 0 to f: "#ff0000" is red, "#0000ff" blue')
        return None
    if not isinstance(lines, list) or not lines or not all(isinstance(line, str) for line in lines):
        refuse(f"the lines of {name} are {'not said' if lines is None else as_typed(lines)}", f"of {', '.join(Lines)}")
        return None
    for line in lines:
        if line not in list(Lines):
            refuse(f"{name} follows {line}, which is no kind of line", closest(line, Lines))
            return None
    for what in (colour.lower(), *lines):
        if what in taken:
            refuse(f"{name} and {taken[what]} both have {what}", "a machine tells them apart by it")
            return None
        taken[what] = name
    return Tool(name, colour.lower(), tuple(Lines(line) for line in lines))
