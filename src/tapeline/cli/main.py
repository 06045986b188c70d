"""`tapeline`: finds the command, runs it, and turns whatever goes wrong into one report and an exit code.

Exit codes: 0 done; 1 a check failed; 2 what was given cannot be used; 3 a fault of Tapeline's own; 130 stopped by the
maker; 143 asked to end; 141 nobody reads any more.
"""

from __future__ import annotations

import os
import signal
import sys
import traceback
from collections.abc import Sequence
from contextlib import suppress
from io import TextIOWrapper
from typing import TextIO

import click
from click.shell_completion import shell_complete

from tapeline.cli.commands import tapeline
from tapeline.cli.show import show_problems
from tapeline.problems import InputError, Problem, Severity, closest

__all__ = ["BAD_INPUT", "CHECK_FAILED", "OWN_FAULT", "main", "run"]

CHECK_FAILED = 1
BAD_INPUT = 2
OWN_FAULT = 3
COMPLETION = "_TAPELINE_COMPLETE"
"""Set by a shell that completes a half typed command."""
STOPPED = 130
"""As shells count a process that Ctrl-C ended."""
ENDED = 143
"""As shells count a process that was asked to end."""
NOBODY_READS = 141
"""As shells count a process that ended because nobody read its output."""


def main() -> None:
    """The command `tapeline`."""
    lost = sys.stdout is None  # the shell's `>&-`
    for name in ("stdout", "stderr"):
        if getattr(sys, name) is None:
            setattr(sys, name, open(os.devnull, "w", encoding="utf-8"))  # noqa: PTH123, SIM115 - open as long as we run
    if lost:
        hint = "to see nothing of it, send it to /dev/null. Nothing was done."
        says = "there is nowhere to write to: standard output is closed"
        sys.exit(_report([Problem("cannot-write", Severity.ERROR, says, hint=hint)]))
    if signal.getsignal(signal.SIGINT) is signal.SIG_DFL:  # ignored, where a shell started it in the background
        signal.signal(signal.SIGINT, signal.default_int_handler)
    signal.signal(signal.SIGTERM, _end)
    sys.exit(run(sys.argv[1:]))


def _end(*_: object) -> None:
    """Asked to end: on the way out temporary files are taken away and workers are stopped."""
    raise SystemExit(ENDED)


def run(arguments: Sequence[str]) -> int:  # noqa: PLR0911 - one return for each way a command ends
    """Run a command; its exit code."""
    try:
        return _run(arguments)
    except InputError as error:
        return _report(error.problems)
    except click.exceptions.Exit as error:
        return error.exit_code
    except click.exceptions.NoArgsIsHelpError as error:
        click.echo(error.format_message())
        return 0
    except click.ClickException as error:
        return _report([_of_command_line(error)])
    except (click.Abort, KeyboardInterrupt):
        return STOPPED
    except BrokenPipeError:
        return _nobody_reads()
    except OSError as error:
        says = f"{error.filename or 'the output'}: {(error.strerror or str(error)).lower()}"
        return _report([Problem("cannot-write", Severity.ERROR, says)])
    except Exception as error:  # noqa: BLE001 - whatever it is, the maker gets a report of it
        return _own_fault(error)


def _run(arguments: Sequence[str]) -> int:
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")  # a poor terminal shows ¼ somehow, rather than nothing
    if asked := os.environ.get(COMPLETION):
        return shell_complete(tapeline, {}, "tapeline", COMPLETION, asked)
    # Not tapeline.main(): that has endings of its own for Ctrl-C and for a reader that goes away.
    with tapeline.make_context("tapeline", list(arguments)) as context:
        code = tapeline.invoke(context)
    sys.stdout.flush()
    return code if isinstance(code, int) else 0


def _report(problems: Sequence[Problem]) -> int:
    try:
        show_problems(problems)
    except OSError:  # nobody reads it, or its disk is full: the exit code still tells
        _drop(sys.stderr)
    return BAD_INPUT


def _of_command_line(error: click.ClickException) -> Problem:
    context = getattr(error, "ctx", None)
    path = context.command_path if context is not None else "tapeline"
    message = error.format_message().rstrip(".")
    hint = f"{path} --help shows how it is used"
    if isinstance(error, click.NoSuchOption):
        message = f"{path} has no option {error.option_name}"
        if error.possibilities:
            hint = f"{closest(error.option_name, error.possibilities)} {hint}"
    elif isinstance(error, click.MissingParameter) and error.param is not None:
        message = f"{path} needs {error.param.human_readable_name}"
    return Problem("command-line", Severity.ERROR, message[:1].lower() + message[1:], hint=hint)


def _nobody_reads() -> int:
    _drop(sys.stdout)
    return NOBODY_READS


def _drop(stream: TextIO) -> None:
    """Python flushes once more when it ends; that must not fail either."""
    with suppress(OSError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def _own_fault(error: Exception) -> int:
    if os.environ.get("TAPELINE_TRACE") == "1":
        traceback.print_exception(error)
    frames = traceback.extract_tb(error.__traceback__)
    place = f"{os.path.basename(frames[-1].filename)}, line {frames[-1].lineno}" if frames else "nowhere"  # noqa: PTH119 - a name, no file
    first_line = (str(error).splitlines() or [""])[0][:200]
    problem = Problem(
        "own-fault",
        Severity.ERROR,
        f"Tapeline itself failed: {type(error).__name__}: {first_line}",
        place,
        "please report this with the docket and the command; TAPELINE_TRACE=1 shows where it happened",
    )
    _report([problem])
    return OWN_FAULT
