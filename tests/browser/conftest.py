"""A real Chromium for these tests: the machine's own, else the one that Playwright downloaded.

Without one they are skipped, and the end of the run says so. Where CI is set they fail instead.
"""

from __future__ import annotations

import os
from contextlib import contextmanager

import pytest
from chromium import MISSING, launched
from playwright.sync_api import sync_playwright
from served import SLOW, hear_faults, serving

from texts import example


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


@contextmanager
def contexts(browser):
    """Opens windows that know nothing of each other, and closes them in the end.

    Nothing fades in them: a colour that is on its way to another is neither of the two.
    """
    opened = []

    def opening(**how):
        opened.append(browser.new_context(**{"reduced_motion": "reduce", **how}))
        return opened[-1]

    yield opening
    for context in opened:
        context.close()


@pytest.fixture
def new_context(browser):
    """Opens windows that know nothing of each other nor of another test's."""
    with contexts(browser) as opening:
        yield opening


@pytest.fixture(scope="module")
def one_context(browser):
    """What the windows of one file of tests have in common: what was read once is not read anew.

    For tests that tick, type and fold nothing; the others have a `new_context` each.
    """
    with contexts(browser) as opening:
        yield opening()


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """Where the aircraft of one file of tests lie."""
    return tmp_path_factory.mktemp("hangar")


@pytest.fixture(scope="module")
def app(folder):
    """The server on that folder, for one file of tests."""
    with serving(folder) as served:
        yield served


@pytest.fixture
def mine(folder, tmp_path):
    """A Brindlewick of the builder's own in that folder, of which no other test knows."""
    path = folder / f"mine_{tmp_path.name}.yaml"
    path.write_text(example("brindlewick"), encoding="utf-8")
    yield path
    path.unlink(missing_ok=True)


@pytest.fixture
def page(new_context):
    """A window of a computer, in which nothing may go wrong."""
    page = new_context(viewport={"width": 1280, "height": 900}).new_page()
    hear_faults(page)
    page.set_default_timeout(SLOW)
    yield page
    assert not page.faults


def pytest_terminal_summary(terminalreporter):
    skipped = terminalreporter.stats.get("skipped", [])
    if any(MISSING in str(report.longrepr) for report in skipped):
        terminalreporter.write_sep("!", MISSING, red=True)
