"""docs/reference/commands.md: every command, as its own help tells it."""

from __future__ import annotations

import click

from scripts.pages.markdown import NOTICE
from tapeline.cli.commands import COMMANDS, tapeline

__all__ = ["page"]

EXIT_CODES = (
    ("0", "done"),
    ("1", "done, but a check failed: the garment may not be cut, or an order of a batch was refused"),
    ("2", "what was given cannot be used; nothing was made"),
    ("3", "a fault of Tapeline's own"),
    ("130", "stopped by the maker"),
    ("141", "whatever read the output has stopped reading"),
)


def page() -> str:
    """The page."""
    parts = [
        NOTICE,
        "# Commands\n",
        "In a checkout, `./run ARGUMENTS` is `tapeline ARGUMENTS`, and `./run` alone makes `examples/tee.toml`.\n",
        "Results go to standard output, problems to standard error; files are written whole or not at all.\n",
        f"```text\n{_help(tapeline, 'tapeline')}\n```\n",
    ]
    for name in COMMANDS:
        command = tapeline.get_command(click.Context(tapeline), name)
        if command is None:
            raise SystemExit(f"reference: the command {name} is listed and not there")
        parts += [f"## {name}\n", f"```text\n{_help(command, f'tapeline {name}')}\n```\n"]
    parts += ["## Exit codes\n", "\n".join(f"- {code}: {says}." for code, says in EXIT_CODES) + "\n"]
    return "\n".join(parts)


def _help(command: click.Command, name: str) -> str:
    context = click.Context(command, info_name=name, terminal_width=80, max_content_width=80)
    return "\n".join(line.rstrip() for line in command.get_help(context).splitlines())
