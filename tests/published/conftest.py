"""The fixture every published case goes through, and the file a validation page is made from.

`pytest tests/published --validation-json PATH` writes all cases of the run; without it nothing is
written.
"""

import json
from functools import partial
from pathlib import Path

import pytest
from comparison import PROPERTY, compare


@pytest.fixture
def case(record_property):
    """Compare one number of ours with a published figure and remember both; see `compare`."""
    return partial(compare, record_property)


def pytest_addoption(parser):
    parser.addoption("--validation-json", metavar="PATH", help="write every published case of this run")


def pytest_configure(config):
    path = config.getoption("validation_json", None)
    if path and not hasattr(config, "workerinput"):
        config.pluginmanager.register(_ValidationFile(Path(path)), "validation-json")


class _ValidationFile:
    """Collects the cases from the reports, which also arrive here from parallel workers."""

    def __init__(self, path):
        self.path = path
        self.cases = []

    def pytest_runtest_logreport(self, report):
        if report.when != "call":
            return
        for name, value in report.user_properties:
            if name == PROPERTY:
                self.cases.append({**value, "test": report.nodeid, "passed": report.passed})

    def pytest_sessionfinish(self):
        ordered = sorted(self.cases, key=lambda each: (each["source"], each["test"], each["name"]))
        self.path.write_text(json.dumps(ordered, indent=2) + "\n", encoding="utf-8")
