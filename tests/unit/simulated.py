"""NiceGUI's stand-in for somebody at a browser, on the pages of our app."""

from __future__ import annotations

import gc
from contextlib import asynccontextmanager

from nicegui.testing import user_simulation

from firmpedal.web import app


@asynccontextmanager
async def simulated(shelf):
    """Somebody who looks at the aircraft of a shelf.

    Before and after, NiceGUI looks through all that this process holds for what is left of itself. What was
    there earlier is none of it, and is laid aside meanwhile: late in a run it is millions of values.
    """
    gc.freeze()
    try:
        async with user_simulation(root=None) as user:
            app._pages(shelf, None)
            yield user
    finally:
        gc.unfreeze()
