"""Where the pages are, and the option that brings their outputs up to date.

`pytest tests/docs --rewrite-docs` writes what the program really prints into every page.
"""

import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / "docs"))  # the pages' own tools are not installed


def pytest_addoption(parser):
    parser.addoption("--rewrite-docs", action="store_true", help="write real outputs into the pages")


@pytest.fixture
def rewrite(request):
    return request.config.getoption("--rewrite-docs", default=False)
