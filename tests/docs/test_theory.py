"""The small sums on the page of theory come out as printed there."""

import doctest

from page_blocks import ROOT


def test_sums_come_out():
    failed, tried = doctest.testfile(str(ROOT / "docs" / "theory.md"), module_relative=False)
    assert tried > 5
    assert failed == 0
