"""One switch for the golden files: `pytest tests/golden --rewrite-golden` writes them anew."""

from __future__ import annotations

import pytest


def pytest_addoption(parser):
    parser.addoption("--rewrite-golden", action="store_true", help="write the golden files anew")


@pytest.fixture
def rewrite(request) -> bool:
    """Whether to write instead of compare; without the switch on the command line, compare."""
    return bool(request.config.getoption("--rewrite-golden", default=False))
