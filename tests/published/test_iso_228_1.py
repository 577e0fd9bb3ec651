"""[iso-228-1] ISO 228-1, Parallel pipe threads: minor diameters, from memory."""

import pytest

from firmpedal.catalog import catalogue
from firmpedal.formulas.thread_crests import internal_crest


@pytest.mark.parametrize(("name", "printed"), [("G1/8", "8.566"), ("G1/4", "11.445")])
def test_minor_diameter(case, name, printed):
    thread = catalogue().thread(name)
    ours = internal_crest(thread.value("major_diameter").middle, thread.value("thread_height").middle) * 1e3
    case("iso-228-1", f"minor diameter of {name}", f"{printed} mm", ours, how="memory")
