"""A real Chromium for these tests: the machine's own, else the one that Playwright downloaded.

Without one they are skipped, and the end of the run says so. Where CI is set they fail instead.
"""

from __future__ import annotations

import os

import pytest
from chromium import MISSING, launched
from playwright.sync_api import sync_playwright


@pytest.fixture(scope="module")
def browser():
    """One browser for a file of tests; skips, or fails in CI, where there is none.

    Not for the whole run: as long as it is open, so is a loop that no other test can run one beside.
    """
    with sync_playwright() as playwright:
        started = launched(playwright)
        if started is None:
            (pytest.fail if os.environ.get("CI") else pytest.skip)(MISSING)
        yield started
        started.close()


@pytest.fixture
def new_context(browser):
    """Opens windows that know nothing of each other, and closes them after the test.

    Nothing fades in them: a colour that is on its way to another is neither of the two.
    """
    opened = []

    def opening(**how):
        opened.append(browser.new_context(**{"reduced_motion": "reduce", **how}))
        return opened[-1]

    yield opening
    for context in opened:
        context.close()


def pytest_terminal_summary(terminalreporter):
    skipped = terminalreporter.stats.get("skipped", [])
    if any(MISSING in str(report.longrepr) for report in skipped):
        terminalreporter.write_sep("!", MISSING, red=True)
