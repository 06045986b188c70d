"""The command line: each command a file of its own, imported when it is called for."""

from tapeline.cli.main import main

__all__ = ["main"]
