"""The group of commands: found by name, imported when called for, listed in the order of the maker's day."""

from __future__ import annotations

import os
from collections.abc import Callable
from importlib import import_module
from typing import Any

import click

import tapeline as package
from tapeline.problems import closest

__all__ = ["COMMANDS", "command", "tapeline"]

COMMANDS = (
    "new",
    "open",
    "measure",
    "draft",
    "true",
    "explain",
    "form",
    "drape",
    "print",
    "cut",
    "read",
    "size-run",
    "lay",
    "batch",
    "make",
)
"""Each is a file of this folder, with the command in it under its own name, or `NAME_`; a stroke is written `_`."""

SETTINGS = {"help_option_names": ["-h", "--help"], "max_content_width": 80}


class Commands(click.Group):
    """The commands that there are."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - as click calls it
        """In the order of the day."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002 - as above
        """The command of that name, imported now."""
        if cmd_name not in COMMANDS:
            return None
        made: click.Command = import_module(f"tapeline.cli.{cmd_name.replace('-', '_')}").COMMAND
        return made

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """The command meant; says which word is near when there is none."""
        if args and args[0] not in COMMANDS and not args[0].startswith("-"):
            raise click.UsageError(f"there is no command {args[0]}: {closest(args[0], COMMANDS)}", ctx)
        return super().resolve_command(ctx, args)


def command(*, example: str) -> Callable[[Callable[..., Any]], click.Command]:
    """A command with an example below its help; its name is the function's, without a closing `_`."""

    def made(function: Callable[..., Any]) -> click.Command:
        lines = "\n".join(f"  {line}" for line in example.strip().splitlines())
        return click.command(
            function.__name__.rstrip("_").replace("_", "-"),
            context_settings=SETTINGS,
            epilog=f"\b\nExample:\n{lines}",
            no_args_is_help=False,
        )(function)

    return made


@click.group(
    cls=Commands,
    context_settings=SETTINGS,
    epilog="\b\nExample:\n  tapeline new marit.toml --size 88\n  tapeline make marit.toml --out out",
)
@click.version_option(package.__version__, prog_name="tapeline", message="%(prog)s %(version)s")
@click.pass_context
def tapeline(ctx: click.Context) -> None:
    """From the tape measure to the cut line.

    A docket (a TOML file with tapes, style, cloth and finish) goes in; a drafted, trued and finished garment comes
    out, true to scale, and every line can say why it is there.
    """
    if os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb":
        ctx.color = False
