"""A console whose lines end where their words end: no blanks behind them, to copy and compare."""

from __future__ import annotations

import re
from typing import Any

from rich.console import Console

# Blanks, and colour codes among them.
_BEHIND = re.compile(r"[ \t]+((?:\x1b\[[0-9;]*m[ \t]*)*)$", re.MULTILINE)


class TidyConsole(Console):
    """Prints as its parent does, without the blanks that fill cells, and lines that were wrapped."""

    def print(self, *objects: Any, **options: Any) -> None:
        if self.legacy_windows:  # it is written to by calls of the system, not as text
            super().print(*objects, **options)
            return
        with self.capture() as made:
            super().print(*objects, **options)
        try:
            self.file.write(without_blanks(made.get()))
            self.file.flush()
        except BrokenPipeError:
            self.on_broken_pipe()


def without_blanks(text: str) -> str:
    """Take the blanks at the ends of lines away, and leave the colour codes among them."""
    return _BEHIND.sub(lambda found: re.sub(r"[ \t]", "", found[1]), text)
