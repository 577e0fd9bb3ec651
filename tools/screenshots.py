"""`make screenshots`: every page of the app as a picture, for somebody to look at each.

It takes the addresses from the app's own list, starts the app on a copy of the examples, and writes whole
pages at the width of a phone, a laptop and a large screen, light and dark.
"""

from __future__ import annotations

import re
import shutil
import sys
import tempfile
from pathlib import Path
from typing import TYPE_CHECKING

from playwright.sync_api import sync_playwright

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "tests" / "browser"))  # how the tests start the app and the browser

from chromium import MISSING, launched  # noqa: E402
from served import Served  # noqa: E402

from firmpedal.web.site import every_page  # noqa: E402

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

OUT = ROOT / "out" / "screenshots"
WIDTHS = (390, 1280, 1920)
LOOKS = ("light", "dark")
HEIGHT = 900
# One aircraft of which there is something to see on every step, and what the file says as written.
SHOWN = (("brindlewick.yaml", "rigid"), ("oatmere.yaml", None))
SLOW = 60_000  # ms
TALLEST = 8000  # px; what is longer is cut, for a picture that nobody can open shows nothing


def main() -> int:
    """Write the pictures; the result is the exit code."""
    shutil.rmtree(OUT, ignore_errors=True)
    OUT.mkdir(parents=True)
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        for example in (ROOT / "examples").glob("*.yaml"):
            shutil.copy(example, folder)
        browser = launched(playwright)
        if browser is None:
            sys.stderr.write(f"{MISSING}\n")
            return 1
        served = Served(folder)
        try:
            count = sum(_look(browser, served.base, width, look) for width in WIDTHS for look in LOOKS)
        finally:
            served.stop()
    sys.stdout.write(f"{count} pictures in {OUT.relative_to(ROOT)}\n")
    return 0


def _look(browser: Browser, base: str, width: int, look: str) -> int:
    phone = width < 600
    context = browser.new_context(
        viewport={"width": width, "height": HEIGHT}, color_scheme=look, has_touch=phone, is_mobile=phone
    )  # fmt: skip
    page, count = context.new_page(), 0
    for address in dict.fromkeys(each for shown in SHOWN for each in every_page(*shown)):
        settled(page, base + address)
        tall = min(page.evaluate("document.documentElement.scrollHeight"), TALLEST)
        page.screenshot(
            path=OUT / f"{_name(address)}_{width}_{look}.png",
            full_page=True, clip={"x": 0, "y": 0, "width": width, "height": tall},
        )  # fmt: skip
        count += 1
    context.close()
    return count


def settled(page: Page, address: str) -> None:
    """Open a page and wait until all of it is worked out."""
    page.goto(address)
    page.wait_for_selector(".fp-main")
    page.wait_for_function("() => !document.body.innerText.includes('Working it out')", timeout=SLOW)


def _name(address: str) -> str:
    """An address as the name of a file."""
    return re.sub(r"[^\w]+", "_", address.replace(".yaml", "")).strip("_") or "start"


if __name__ == "__main__":
    sys.exit(main())
