"""`make screenshots`: every page of the app as a picture, for somebody to look at each.

It takes the addresses from the app's own list and the states from beside it, starts the app on a copy of the
examples, and writes whole pages at the width of a phone, a laptop and a large screen, light and dark.
"""

from __future__ import annotations

import re
import shutil
import sys
import tempfile
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from playwright.sync_api import sync_playwright

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "tests" / "browser"))  # how the tests start the app and the browser

from chromium import MISSING, launched  # noqa: E402

from firmpedal.web.site import every_page  # noqa: E402
from tools.states import SLOW, STATES, Folders, State, folders, settled  # noqa: E402

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

OUT = ROOT / "out" / "screenshots"
WIDTHS = (390, 1280, 1920)
LOOKS = ("light", "dark")
HEIGHT = 900
# One aircraft of which there is something to see on every step, and what the file says as written.
SHOWN = (("brindlewick.yaml", "rigid"), ("oatmere.yaml", None))
TALLEST = 8000  # px; what is longer is cut, for a picture that nobody can open shows nothing


def main() -> int:
    """Write the pictures; the result is the exit code. Words choose pictures by how their names begin."""
    wanted = tuple(sys.argv[1:])
    shutil.rmtree(OUT, ignore_errors=True)
    OUT.mkdir(parents=True)
    with tempfile.TemporaryDirectory() as place, sync_playwright() as playwright:
        browser = launched(playwright)
        if browser is None:
            sys.stderr.write(f"{MISSING}\n")
            return 1
        with folders(Path(place)) as on:
            count = sum(_look(browser, on, width, look, wanted) for width in WIDTHS for look in LOOKS)
    sys.stdout.write(f"{count} pictures in {OUT.relative_to(ROOT)}\n")
    return 0


def _look(browser: Browser, on: Folders, width: int, look: str, wanted: tuple[str, ...]) -> int:
    """Every page and every state at one width, light or dark; the result is how many."""
    phone = width < 600
    context = browser.new_context(
        viewport={"width": width, "height": HEIGHT}, color_scheme=look, has_touch=phone, is_mobile=phone
    )  # fmt: skip
    context.set_default_timeout(SLOW)
    page, count = context.new_page(), 0
    for state in (*_pages(), *STATES):
        if wanted and not state.name.startswith(wanted):
            continue
        state.reach(page, on)
        tall = min(page.evaluate("document.documentElement.scrollHeight"), TALLEST)
        page.screenshot(
            path=OUT / f"{state.name}_{width}_{look}.png",
            full_page=True, clip={"x": 0, "y": 0, "width": width, "height": tall},
        )  # fmt: skip
        count += 1
    context.close()
    return count


def _pages() -> list[State]:
    """Each page of the app's own list, as it is when it is opened."""
    found = dict.fromkeys(each for shown in SHOWN for each in every_page(*shown))
    return [State(_name(each), partial(_open, each)) for each in found]


def _open(address: str, page: Page, on: Folders) -> None:
    settled(page, on.full.base + address)


def _name(address: str) -> str:
    """An address as the name of a file."""
    return re.sub(r"[^\w]+", "_", address.replace(".yaml", "")).strip("_") or "start"


if __name__ == "__main__":
    sys.exit(main())
