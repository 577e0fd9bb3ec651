"""Loading what the app runs on: what the first page needs at once, the rest in the pause after it."""

from __future__ import annotations

import sys
import time
from importlib import import_module
from threading import Thread

# The library of the live connection loads these where they are installed, and does without where they are
# not: they are for clients of such a server, which we are not. They take a quarter of a second.
FOR_CLIENTS = ("aiohttp", "requests", "websocket")
PAUSE = 8.0  # s from the start: by then the first page and its verdicts are there
# The pages of one aircraft; and what plans the cutting, for the page of what to buy.
THE_REST = ("firmpedal.web.site", "scipy.optimize")


def load() -> None:
    """Load the web's library without what is for clients alone; whoever wants that later finds it."""
    hidden = [name for name in FOR_CLIENTS if name not in sys.modules]
    sys.modules.update(dict.fromkeys(hidden))  # type: ignore[arg-type]  # None: as if it were not installed
    try:
        import_module("nicegui")
    finally:
        for name in hidden:
            del sys.modules[name]


def load_the_rest(after: float = PAUSE) -> Thread:
    """Load apart from the page's own loop what a later page would have to wait for."""

    def loaded() -> None:
        time.sleep(after)
        for name in THE_REST:
            import_module(name)

    thread = Thread(target=loaded, name="loading", daemon=True)
    thread.start()
    return thread
