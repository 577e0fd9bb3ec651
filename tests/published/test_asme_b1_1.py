"""[asme-b1-1] ASME B1.1, Unified inch screw threads: limits of fine threads, from memory."""

import pytest
from exact_units import INCH

from firmpedal.catalog import catalogue
from firmpedal.formulas.thread_crests import internal_crest, least_external_crest

SOURCE = "asme-b1-1"


@pytest.mark.parametrize(
    ("name", "major", "pitch", "printed"),
    [
        ("3/8-24", 0.3750, 24, "0.3678"),
        ("7/16-20", 0.4375, 20, "0.4294"),
        ("1/2-20", 0.5000, 20, "0.4919"),
        ("9/16-18", 0.5625, 18, "0.5538"),
        ("3/4-16", 0.7500, 16, "0.7406"),
    ],
)
def test_least_major_diameter_of_class_3a(case, name, major, pitch, printed):
    ours = least_external_crest(major * INCH, INCH / pitch, 0.0) / INCH
    case(SOURCE, f"least major diameter of {name} UNF-3A", f"{printed} in", ours, how="memory")


@pytest.mark.parametrize(
    ("name", "printed"),
    [("3/8-24", "0.330"), ("7/16-20", "0.383"), ("1/2-20", "0.446"), ("9/16-18", "0.502")],
)
def test_least_minor_diameter_of_class_2b(case, name, printed):
    thread = catalogue().thread(name)
    major, height = thread.value("major_diameter").middle, thread.value("thread_height").middle
    ours = internal_crest(major, height) / INCH
    case(SOURCE, f"least minor diameter of {name} UNF-2B", f"{printed} in", ours, how="memory")
