"""Every record of the catalogue loads and says its source and mark; what the reader of records refuses."""

import re
from importlib import resources

import pytest

from firmpedal.catalog import catalogue
from firmpedal.catalog.errors import RecordError
from firmpedal.catalog.records import chosen, load, pairs, read_value, rows
from firmpedal.formulas.references import every_entry
from firmpedal.quantity import Mark, Value
from firmpedal.units import Dimension

FILES = sorted(
    each.name for each in resources.files("firmpedal.catalog").joinpath("data").iterdir() if each.is_file()
)
GOOD = {"source": "ms33656", "mark": "memory", "used": True, "flare_end_length": "3 = 0.479 in, 4 = 0.550 in"}


def every_value(thing):
    """Give every value inside records, however deep."""
    if isinstance(thing, Value):
        yield thing
    elif isinstance(thing, tuple | list):
        for each in thing:
            yield from every_value(each)
    elif hasattr(thing, "__dataclass_fields__"):
        for name in thing.__dataclass_fields__:
            yield from every_value(getattr(thing, name))


def test_all_files_are_read():
    known = catalogue()
    assert all(
        (known.parts, known.materials, known.hoses, known.fluids, known.sizes, known.threads, known.torques)
    )
    words = (
        "fittings_flared nuts_sleeves bulkhead pipe caps_plugs compression metric boss washers clamps "
        "part_materials sizes torque threads tubes hoses fluids"
    )
    read = {f"{word}.yaml" for word in words.split()}
    assert set(FILES) == read


def test_every_known_value_has_a_source_that_is_in_the_bibliography():
    keys = set(every_entry())
    known = [value for value in every_value(catalogue()) if value.known]
    assert len(known) > 1000
    assert {value.source for value in known} <= keys
    assert all(value.mark in (Mark.READ, Mark.DERIVED, Mark.MEMORY, Mark.ESTIMATE) for value in known)


def test_every_part_has_a_source_that_is_in_the_bibliography():
    keys = set(every_entry())
    assert {part.source for part in catalogue().parts} <= keys
    assert {part.mark for part in catalogue().parts} == {Mark.READ, Mark.MEMORY}


@pytest.mark.parametrize("file", FILES)
def test_every_source_named_in_a_data_file_is_in_the_bibliography(file):
    text = resources.files("firmpedal.catalog").joinpath("data", file).read_text("utf-8")
    sources = re.findall(r"source: (\S+)", text)
    assert sources
    assert set(sources) <= set(every_entry())
    assert len(sources) == len(re.findall(r"\bmark: \S+", text))


@pytest.mark.parametrize("file", FILES)
def test_no_figure_in_a_data_file_lacks_its_unit(file):
    """Every number after an equals sign is followed by a unit, except pure numbers and thread names."""
    text = resources.files("firmpedal.catalog").joinpath("data", file).read_text("utf-8")
    bare = re.findall(r"^ +(\w+): .*? = [\d.]+(?:,|$)", text, re.MULTILINE)
    assert set(bare) <= {"poisson_ratio", "hand_turns", "wrench_turns"}


def test_values_are_not_negative_and_ranges_run_upwards():
    known = [value for value in every_value(catalogue()) if value.known]
    assert all(0 <= value.low <= value.high for value in known)


def test_recalled_figures_are_not_marked_read():
    """Bend radii and support spacings are recalled; nobody has seen their tables."""
    for size in catalogue().sizes:
        for row in size.rows:
            if row.used and row.name in ("least_bend_radius", "support_spacing"):
                assert row.value.mark is Mark.MEMORY


def test_an_estimate_says_how_it_was_made():
    for part in catalogue().parts:
        assert part.mass.mark is Mark.ESTIMATE
        assert part.mass.step is not None
        assert "density" in part.mass.step.equation
        assert part.mass.low < part.mass.high


def test_a_group_becomes_rows():
    first, second = rows([GOOD], ["3", "4"], "-{key}")
    assert (first.name, first.key, first.used) == ("flare_end_length", "3", True)
    assert first.value.label == "-3 flare end length"
    assert first.value.span == pytest.approx((0.479 * 0.0254, 0.479 * 0.0254))
    assert second.value.source == "ms33656"
    assert second.value.mark is Mark.MEMORY


def test_one_figure_may_hold_for_all():
    group = {"source": "tm-1-1500-204", "mark": "read", "angle": "all = 37 deg"}
    found = rows([group], ["3", "4"], "-{key}", {"angle": "angle"})
    assert [row.key for row in found] == ["3", "4"]


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"source": ""}, "no source"),
        ({"mark": "certain"}, "mark is 'certain'"),
        ({"mark": None}, "mark is None"),
        ({"flare_end_length": "3 = 0.479"}, "no unit"),
        ({"flare_end_length": "7 = 0.479 in"}, "cannot place '7 = 0.479 in'"),
        ({"flare_end_length": "0.479 in"}, "cannot place '0.479 in'"),
        ({"flare_end_length": "3 = 2 psi"}, "psi"),
    ],
)
def test_a_bad_record_is_refused(change, message):
    with pytest.raises(RecordError, match=message):
        rows([{**GOOD, **change}], ["3", "4"], "-{key}")


def test_two_figures_in_use_for_one_place_are_refused():
    with pytest.raises(RecordError, match="two figures in use"):
        chosen(rows([GOOD, GOOD], ["3", "4"], "-{key}"), "here")


def test_conflicting_figures_may_stand_beside_the_one_in_use():
    other = {**GOOD, "used": False}
    assert len(chosen(rows([GOOD, other], ["3", "4"], "-{key}"), "here")) == 2


def test_torques_have_one_row_in_use_per_joint():
    used = [(row.joint, row.tube, row.dash) for row in catalogue().torques if row.preferred]
    assert len(used) == len(set(used))
    for dash in ("-3", "-4", "-5", "-6", "-8"):
        for joint in ("coupling nut", "hose end"):
            for tube in ("aluminium", "steel"):
                assert (joint, tube, dash) in used
    assert all(row.condition for row in catalogue().torques)


def test_derived_and_estimated_figures_keep_their_words():
    record = {"source": "firmpedal-estimate", "mark": "estimate", "note": "two flare ends and a hex"}
    value = read_value("1.3 in", Dimension.LENGTH, "length", record)
    assert value.step.equation == "two flare ends and a hex"
    assert read_value("1.3 in", Dimension.LENGTH, "length", {**record, "mark": "read"}).step is None


def test_pairs_hold_to_their_keys():
    assert list(pairs("a = 1 in, b = 2 to 3 in", {"a", "b"}, "here")) == [("a", "1 in"), ("b", "2 to 3 in")]


def test_a_file_is_read_once():
    assert load("sizes.yaml") is load("sizes.yaml")
