"""The date that is written on pieces."""

from __future__ import annotations

import os
from datetime import UTC, datetime

__all__ = ["today"]


def today() -> str:
    """The date that is written on pieces.

    SOURCE_DATE_EPOCH (seconds since 1970) sets it, for output that does not change from day to day.
    """
    seconds = os.environ.get("SOURCE_DATE_EPOCH", "")
    moment = datetime.fromtimestamp(int(seconds), UTC) if seconds.isdecimal() else datetime.now().astimezone()
    return moment.date().isoformat()
