"""Which Chromium pages are opened in, and how it is started: asking nobody, and without a graphics card."""

from __future__ import annotations

import shutil
from pathlib import Path

MISSING = "no Chromium was found: the tests in a browser did not run"
ARGUMENTS = (
    "--no-sandbox",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-gpu-compositing",  # without a card it costs a third of all, and shows the same
    "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader",
)


def launched(playwright):
    """The machine's own, else the one that Playwright downloaded; None where there is neither."""
    own = shutil.which("chromium") or shutil.which("chromium-browser")
    found = own or playwright.chromium.executable_path
    if not Path(found).exists():
        return None
    return playwright.chromium.launch(executable_path=found, args=list(ARGUMENTS))
