"""The cutting table: one docket's journal and its name, and what a window needs to show it."""

from __future__ import annotations

import asyncio
from dataclasses import dataclass, field
from typing import Any

from tapeline.web.drawing import drawing
from tapeline.web.journal import Journal
from tapeline.web.laying import Laying
from tapeline.web.places import places, title
from tapeline.web.view import View, look
from tapeline.web.workbench import Workbench

__all__ = ["Table"]


@dataclass(slots=True)
class Table:
    """One docket, shared by all windows; one change at a time."""

    journal: Journal
    name: str
    shared: str = ""
    """The address at which other machines reach it; empty where none does."""
    busy: asyncio.Lock = field(default_factory=asyncio.Lock)
    bench: Workbench = field(default_factory=Workbench)
    """Where prints, reports and explanations are made."""
    laying: Laying = field(default_factory=Laying)

    @property
    def view(self) -> View:
        """The docket now."""
        return look(self.journal.text, self.name)

    def drawn(self) -> dict[str, Any]:
        """The docket now and its drawing: what can be shown before anything is known of what is wrong with it."""
        journal, view = self.journal, self.view
        return {
            "version": journal.version,
            "text": journal.text,
            "undo": journal.can_undo,
            "redo": journal.can_redo,
            "title": title(view),
            "drawing": drawing(view),
        }

    def state(self, only: str = "") -> dict[str, Any]:
        """What a window needs to show the docket now; with one place only, where it asks for the others afterwards."""
        return {**self.drawn(), **places(self.view, only)}
