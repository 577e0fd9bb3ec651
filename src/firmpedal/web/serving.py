"""How the app is started, and how it runs until it is stopped."""

from __future__ import annotations

import logging
from typing import TYPE_CHECKING

from nicegui import app, ui

from firmpedal.web.app import STATIC, build
from firmpedal.web.lan import EVERYWHERE
from firmpedal.web.loading import load_the_rest
from firmpedal.web.tidying import hold_back

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.web.lan import Lan
    from firmpedal.web.shelf import Shelf

HOST = "127.0.0.1"
PATIENCE = 30.0  # s; a window that is busy or asleep for less than this goes on where it was


def serve(
    shelf: Shelf,
    port: int,
    page: str,
    told: Callable[[str], None],
    *,
    browser: bool,
    lan: Lan | None = None,
) -> None:
    """Run the app until it is stopped.

    Args:
        shelf: The folder it is opened on.
        port: A free port.
        page: The address of the first page to show.
        told: Is called with the whole address as soon as it answers.
        browser: Whether to open a browser on it.
        lan: What lets phones of the local network in; without it this machine alone can reach it.
    """
    build(shelf, port, lan)
    hold_back()
    address = "http://" + f"{HOST}:{port}"
    app.on_startup(lambda: told(f"{address}{page}"))
    app.on_startup(load_the_rest)
    logging.getLogger("uvicorn.error").addFilter(_worth_saying)
    ui.run(
        host=HOST if lan is None else EVERYWHERE,
        port=port,
        title="Firmpedal",
        favicon=STATIC / "mark.svg",
        language="en-US",
        reload=False,
        show=page if browser else False,
        show_welcome_message=False,
        tailwind=False,
        dark=None,
        binding_refresh_interval=None,
        reconnect_timeout=PATIENCE,
        proxy_headers=False,  # who asks is what the system says, not what a request says
    )


def _worth_saying(record: logging.LogRecord) -> bool:
    """Whether the server's word is for a builder: not that a window was closed before its page was there."""
    return not (record.exc_info and str(record.exc_info[1]) == "No response returned.")
