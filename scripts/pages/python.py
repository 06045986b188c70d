"""docs/reference/python.md: the public names of `tapeline.project` and `tapeline.docket`, for Python callers."""

from __future__ import annotations

import inspect
from collections.abc import Callable
from dataclasses import fields, is_dataclass
from enum import Enum
from types import ModuleType
from typing import Any

import tapeline.docket
import tapeline.project
from scripts.pages.markdown import NOTICE

__all__ = ["page"]

MODULES = (tapeline.docket, tapeline.project)


def page() -> str:
    """The page."""
    parts = [
        NOTICE,
        "# From Python\n",
        (
            "The command goes through these functions too; see [use Tapeline from Python](../howto/python.md).\n"
            "Lengths are millimetres and angles radians.\n"
            "Whatever cannot be used raises `InputError`, with every problem found in its `problems`.\n"
        ),
    ]
    for module in MODULES:
        parts += [f"## {module.__name__}\n", f"{_first(module.__doc__)}\n"]
        parts += [_entry(module, name) for name in module.__all__]
    return "\n".join(parts)


def _entry(module: ModuleType, name: str) -> str:
    thing = getattr(module, name)
    lines = [f"### {name}\n"]
    if is_dataclass(thing):
        held = [f.name for f in fields(thing) if not f.name.startswith("_")]
        lines.append(f"{_first(thing.__doc__)}\n")
        lines.append("Holds " + ", ".join(f"`{field}`" for field in held) + ".\n")
    else:
        lines.append(f"```python\n{_signature(name, thing)}\n```\n")
        lines.append(f"{_first(thing.__doc__)}\n")
    return "\n".join(lines)


def _signature(name: str, function: Callable[..., Any]) -> str:
    """As it stands in the source, on one line."""
    signature = inspect.signature(function)
    said: list[str] = []
    star = False
    for parameter in signature.parameters.values():
        if parameter.kind is parameter.KEYWORD_ONLY and not star:
            said, star = [*said, "*"], True
        default = parameter.default
        shown = f"{type(default).__name__}.{default.name}" if isinstance(default, Enum) else repr(default)
        said.append(f"{parameter.name}: {parameter.annotation}" + ("" if default is parameter.empty else f" = {shown}"))
    return f"{name}({', '.join(said)}) -> {signature.return_annotation}"


def _first(text: str | None) -> str:
    """The first paragraph of a docstring, on one line."""
    return " ".join(inspect.cleandoc(text or "").split("\n\n")[0].split())
