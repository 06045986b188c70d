"""The date that is written on pieces."""

from __future__ import annotations

import os
from datetime import UTC, datetime

from tapeline.problems import InputError, Problem, Severity

__all__ = ["today"]


def today() -> str:
    """The date that is written on pieces.

    SOURCE_DATE_EPOCH (seconds since 1970) sets it, for output that does not change from day to day.
    """
    seconds = os.environ.get("SOURCE_DATE_EPOCH", "")
    if not seconds:
        return datetime.now().astimezone().date().isoformat()
    try:
        return datetime.fromtimestamp(int(seconds), UTC).date().isoformat()
    except (ValueError, OverflowError, OSError):
        says = f"SOURCE_DATE_EPOCH is {seconds[:40]!r}; it is a date in whole seconds since 1970"
        hint = "set it right, or leave it unset for today. Nothing was written."
        raise InputError(Problem("command-line", Severity.ERROR, says, hint=hint)) from None
