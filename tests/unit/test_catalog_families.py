"""The catalogue is whole: every family in every size and metal, with marks, and figures as published."""

from __future__ import annotations

from collections import defaultdict

import pytest

from firmpedal.catalog import catalogue
from firmpedal.model.part import Category, Form, Gender
from firmpedal.quantity import Mark
from firmpedal.units import from_unit

PARTS = catalogue().parts
FLARED = "3 4 5 6 8"
PAIRS = "4-3 5-3 5-4 6-3 6-4 6-5 8-3 8-4 8-5 8-6"
UPWARDS = "3-4 3-5 3-6 3-8 4-5 4-6 4-8 5-6 5-8 6-8"
PIPE = "1 2 3 4"
HOSE = "4 6 8"
PLASTIC = "1/8 3/16 1/4 6mm"
TUBE_BY_PIPE = "1/8x1/8 3/16x1/8 1/4x1/8 1/4x1/4 6mmx1/8"
BOTH = {"aluminium", "steel"}

# Common practice, no source: what a builder's shop of these fittings has.
SIZES = {
    **dict.fromkeys(
        [
            "AN815",
            "AN821",
            "AN824",
            "AN825",
            "AN826",
            "AN827",
            "AN832",
            "AN833",
            "AN837",
            "AN804",
            "AN834",
            "AS1031",
            "AN818",
            "AN819",
            "AN817",
            "AN924",
            "AN929",
            "AN806",
            "AN814",
        ],
        FLARED,
    ),
    "AN816": "3 4 4-4 5 5-4 6 6-2 6-6 6-8 8 8-4",
    "AN822": "3 4 4-4 5 6 8",
    "AN823": "3 4 4-4 5 6 8",
    "AN919": PAIRS,
    "AN893": PAIRS,
    "AN894": UPWARDS,
    **dict.fromkeys(["AN910", "AN911", "AN913", "AN914", "AN915", "AN916", "AN917", "AN932"], PIPE),
    "AN912": "1 3/8x1/8 3/8x1/4 1/2x1/8 1/2x1/4 1/2x3/8",
    **dict.fromkeys(["AN807", "AN838", "AN840", "AN842", "AN844"], HOSE),
    "AN960": "616 716 816 916 1216",
    "MET-S": "M10x1x3 M10x1x4 M10x1.25x3 M10x1.25x4 M12x1x3 M12x1x4",
    "MET-P": "M10x1 M10x1.25 M12x1",
    "BANJO-BOLT": "M10x1 M10x1.25 M12x1",
    "BANJO": "M10x3 M10x4 M12x3 M12x4",
    "CLAMP": "3 4 5 6 7 8 9 10 12",
}
OF_ONE_MATERIAL = {
    "COMP-S": (TUBE_BY_PIPE, "brass"),
    "COMP-E": (TUBE_BY_PIPE, "brass"),
    **dict.fromkeys(("COMP-U", "COMP-T", "COMP-NUT", "COMP-SLEEVE", "COMP-INSERT"), (PLASTIC, "brass")),
    "MS28778": (FLARED, "nitrile"),
    "WASHER-C": ("M10 M12", "copper"),
    "WASHER-B": ("M10 M12", "bonded rubber"),
    "AN900": ("6 7 8 9 12", "copper"),
}


def by_family():
    found = defaultdict(set)
    for part in PARTS:
        found[part.family].add((part.size, part.material))
    return found


@pytest.mark.parametrize("family", SIZES)
def test_a_family_is_there_in_every_size_in_aluminium_and_steel(family):
    assert by_family()[family] == {(size, metal) for size in SIZES[family].split() for metal in BOTH}


@pytest.mark.parametrize("family", OF_ONE_MATERIAL)
def test_a_family_of_one_material_is_there_in_every_size(family):
    sizes, material = OF_ONE_MATERIAL[family]
    assert by_family()[family] == {(size, material) for size in sizes.split()}


def test_there_is_no_other_family():
    assert set(by_family()) == set(SIZES) | set(OF_ONE_MATERIAL)


def test_every_figure_of_every_part_has_a_source_and_a_mark():
    for part in PARTS:
        assert part.source, part.designation
        assert part.dimensions, part.designation
        for name, value in part.dimensions:
            assert value.source, (part.designation, name)
            assert isinstance(value.mark, Mark)


def test_what_no_source_gives_is_a_range():
    """Only the least projection of a bulkhead end is one figure: a bound, not a size."""
    points = {
        name
        for part in PARTS
        for name, value in part.dimensions
        if value.mark is Mark.ESTIMATE and value.low == value.high
    }
    assert points == {"bulkhead_end_least_projection"}


def test_a_figure_of_the_projects_own_designations_is_never_marked_as_read():
    own = ("MET", "BANJO", "COMP", "WASHER", "CLAMP")
    for part in PARTS:
        if part.family.startswith(own):
            assert part.mark is Mark.MEMORY
            assert {value.mark for _, value in part.dimensions} == {Mark.ESTIMATE}


def test_every_part_has_a_width_and_every_elbow_an_outlet():
    assert [part.designation for part in PARTS if part.width is None] == []
    assert [part.designation for part in PARTS if part.turn and part.outlet_leg is None] == []


def test_every_bulkhead_fitting_has_a_panel_grip_that_is_an_estimate():
    held = [part for part in PARTS if part.needs_panel]
    assert {part.family for part in held} == {
        *("AN832", "AN833", "AN837", "AN804", "AN834", "AS1031", "AN838"),
    }
    for part in held:
        grip = part.dimension("panel_grip")
        assert grip.mark is Mark.ESTIMATE
        assert from_unit(0.040, "in") < grip.low < grip.high  # the panel of the sums in bulkhead.yaml goes in
        assert grip.high < from_unit(0.75, "in")  # a sandwich of that thickness never does


# As printed, typed again from the sheets: AN924 Rev 13, columns A, B, E, G; AN818 Rev 20, hexagon and hole;
# AN929 Rev 13, column H; AS5169A columns A, and B with .020 in added; AS5194E lengths. All in inches.
PUBLISHED = {
    ("AN924", "hex_across_flats"): {"3": 0.625, "4": 0.688, "5": 0.750, "6": 0.813, "8": 1.000},
    ("AN924", "thickness"): {"3": 0.219, "4": 0.250, "5": 0.250, "6": 0.266, "8": 0.313},
    ("AN924", "across_corners_least"): {"3": 0.699, "4": 0.771, "5": 0.842, "6": 0.914, "8": 1.127},
    ("AN924", "bearing_face_diameter"): {"3": 0.562, "4": 0.625, "5": 0.687, "6": 0.750, "8": 0.937},
    ("AN818", "hex_across_flats"): {"3": 0.437, "4": 0.562, "5": 0.625, "6": 0.687, "8": 0.875},
    ("AN818", "tube_hole_diameter"): {"3": 0.242, "4": 0.305, "5": 0.374, "6": 0.440, "8": 0.570},
    ("AN929", "overall_length"): {"3": 0.531, "4": 0.531, "5": 0.563, "6": 0.625, "8": 0.750},
    ("AN814", "overall_length"): {"3": 0.562, "4": 0.625},
    ("AN814", "hex_across_flats"): {"3": 0.605 + 0.020, "4": 0.668 + 0.020},
    ("AN816", "overall_length"): {
        "4-4": 1.375,
        "5": 1.141,
        "5-4": 1.375,
        "6": 1.375,
        "6-2": 1.187,
        "6-6": 1.406,
        "6-8": 1.625,
        "8": 1.500,
        "8-4": 1.500,
    },
}


@pytest.mark.parametrize("what", PUBLISHED, ids=" ".join)
def test_published_figures_are_carried_over_and_only_they_are_marked_read(what):
    family, name = what
    for part in PARTS:
        if part.family != family or part.dimension(name) is None:
            continue
        value, printed = part.dimension(name), PUBLISHED[what].get(part.size)
        assert (value.mark is Mark.READ) == (printed is not None), part.designation
        if printed is not None:
            assert value.span == pytest.approx((from_unit(printed, "in"),) * 2, abs=1e-7)


def test_an_o_ring_goes_round_the_undercut_of_its_thread():
    """The ring is stretched a little over the undercut, which is no wider than the thread."""
    for part in (part for part in PARTS if part.family == "MS28778"):
        thread = catalogue().thread(f"-{part.size}").value("major_diameter")
        assert part.dimension("inside_diameter").high < thread.low < part.dimension("outside_diameter").low


@pytest.mark.parametrize(("size", "dash"), [("616", 3), ("716", 4), ("816", 5), ("916", 6), ("1216", 8)])
@pytest.mark.parametrize("family", ["AN960", "AN900"])
def test_a_washer_passes_the_thread_that_it_is_for(family, size, dash):
    number = size if family == "AN960" else size[:-2]
    washer = catalogue().part(f"{family}-{number}")
    thread = catalogue().thread(f"-{dash}").value("major_diameter")
    assert washer.dimension("inside_diameter").low == pytest.approx(thread.low, abs=2e-5)
    assert washer.category is Category.WASHER
    assert washer.ends == ()


@pytest.mark.parametrize("size", ["M10", "M12"])
def test_a_sealing_washer_fits_its_metric_thread(size):
    for family in ("WASHER-C", "WASHER-B"):
        washer = catalogue().part(f"{family}-{size}")
        assert washer.dimension("inside_diameter").low >= int(size[1:]) / 1000
        assert washer.dimension("outside_diameter").low > washer.dimension("inside_diameter").high


def test_a_part_put_to_another_use_is_that_part():
    uses = [part for part in PARTS if part.same_as]
    assert {part.family for part in uses} == {"AN815", "AN833", "AN837"}
    for use in uses:
        plain = catalogue().part(use.same_as)
        assert (use.mass.span, use.turn, use.material) == (plain.mass.span, plain.turn, plain.material)
        assert use.designation == f"{plain.designation} in a boss"
        assert catalogue().part(use.designation.lower()) is use


def test_every_dry_end_has_something_that_goes_on_it():
    """A washer face, an O-ring seat and a bulkhead thread are each closed by a part of one end."""
    loose = {part.dry_ends[0] for part in PARTS if part.dry_ends and not part.flow_ends}
    wanted = {end.complement for part in PARTS if part.flow_ends for end in part.dry_ends}
    assert wanted <= loose
    assert {end.form for end in loose} == {Form.PANEL, Form.WASHER_FACE, Form.O_RING}
    assert {end.gender for end in loose} == {Gender.FEMALE}
