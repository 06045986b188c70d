"""What was written, and when it was taken back: kept line by line as the maker works, so that nothing can be lost.

The journal is a file of JSON lines that only grows. Closing the window or a crash of the program loses at most the line
that was being written, a power cut what was typed in the last moment; an unfinished last line is passed over when it is
read.
"""

from __future__ import annotations

import json
import os
from dataclasses import dataclass, field
from pathlib import Path

__all__ = ["Journal"]


@dataclass(slots=True)
class Journal:
    """The docket's text through time; undo and redo have no limit.

    It grows by `change`; `undo` and `redo` move within it. The version counts every change and move.
    """

    path: Path | None
    """None keeps nothing on disk (for tests)."""
    texts: list[str] = field(default_factory=list)
    at: int = -1
    version: int = 0
    last_keys: tuple[str, ...] = ()

    @classmethod
    def opened(cls, path: Path | None, first: str) -> Journal:
        """A journal as it was left, or a new one that begins with a text."""
        journal = cls(path)
        if path is not None and path.exists():
            journal._recover(path)
        if not journal.texts:
            journal.change(first)
        return journal

    @property
    def text(self) -> str:
        """The docket now."""
        return self.texts[self.at]

    @property
    def can_undo(self) -> bool:
        """Whether there is something to take back."""
        return self.at > 0

    @property
    def can_redo(self) -> bool:
        """Whether something was taken back."""
        return self.at < len(self.texts) - 1

    def change(self, text: str, keys: tuple[str, ...] = ()) -> None:
        """Write a new text. A run of changes of one value (a slider that moves) is one step back."""
        if self.texts and text == self.text:
            return
        again = bool(keys) and keys == self.last_keys and self.at == len(self.texts) - 1 and self.at > 0
        del self.texts[self.at + 1 :]
        if again:
            self.texts[self.at] = text
        else:
            self.texts.append(text)
            self.at += 1
        self.last_keys = keys
        self._write({"again" if again else "text": text})

    def settle(self) -> None:
        """The next change is a step of its own, whatever it changes."""
        self.last_keys = ()

    def undo(self) -> None:
        """Take the last change back."""
        self._move(self.at - 1)

    def redo(self) -> None:
        """Bring it again."""
        self._move(self.at + 1)

    def _move(self, at: int) -> None:
        if 0 <= at < len(self.texts):
            self.at = at
            self.last_keys = ()
            self._write({"at": at})

    def onto_disk(self) -> None:
        """Wait until what was written outlasts a power cut.

        That takes as long as a part of the drawing: the page does it once its answer is out.
        """
        if self.path is not None and self.path.exists():
            with self.path.open("a", encoding="utf-8") as file:
                os.fsync(file.fileno())

    def _write(self, line: dict[str, str | int]) -> None:
        self.version += 1
        if self.path is None:
            return
        self.path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)  # for nobody else on this machine
        with self.path.open("a", encoding="utf-8") as file:
            file.write(json.dumps(line) + "\n")

    def _recover(self, path: Path) -> None:
        written = path.read_text(encoding="utf-8", errors="replace")
        if written and not written.endswith("\n"):
            # A crash cut the last line short; what comes next must not be written onto it.
            with path.open("a", encoding="utf-8") as file:
                file.write("\n")
        for row in written.split("\n"):
            try:
                line = json.loads(row)
            except ValueError:
                continue
            if "text" in line:
                del self.texts[self.at + 1 :]
                self.texts.append(str(line["text"]))
                self.at = len(self.texts) - 1
            elif "again" in line and self.texts:
                del self.texts[self.at + 1 :]
                self.texts[self.at] = str(line["again"])
            elif isinstance(line.get("at"), int) and 0 <= line["at"] < len(self.texts):
                self.at = line["at"]
            self.version += 1
