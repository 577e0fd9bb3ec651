"""How long the random texts go on: `--fuzz-examples 20000` for a night, few by default."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, settings


def pytest_addoption(parser):
    parser.addoption("--fuzz-examples", type=int, default=60, help="how many random texts each test reads")


@pytest.fixture(scope="session")
def examples(request):
    return request.config.getoption("--fuzz-examples")


@pytest.fixture
def fuzzed(examples):
    """Run a test's inner function on that many random examples."""
    slow = [HealthCheck.too_slow, HealthCheck.data_too_large]
    return settings(max_examples=examples, deadline=None, suppress_health_check=slow)
