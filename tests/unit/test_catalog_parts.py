"""Parts: what they are called, how their ends mate, that none stands twice, that masses make sense."""

import math
from collections import Counter

import pytest

from firmpedal.catalog import catalogue
from firmpedal.catalog.errors import RecordError
from firmpedal.catalog.mass import estimated_mass
from firmpedal.catalog.parts import family_parts
from firmpedal.model.part import Category, Clocking, Form, Gender, Interface
from firmpedal.quantity import Mark, exactly
from firmpedal.units import Dimension

PARTS = catalogue().parts
DASHES = ("3", "4", "5", "6", "8")

# Common practice, no source: what builders order by these numbers.
FLARE_TO_PIPE = {"AN816": 0, "AN822": 90, "AN823": 45}
BULKHEAD = {"AN832": 0, "AN833": 90, "AN837": 45}


def part(designation):
    found = catalogue().part(designation)
    assert found is not None, designation
    return found


def interfaces(designation):
    return [end.interface for end in part(designation).ends]


def flare(size, gender=Gender.MALE):
    return Interface(Form.FLARE_37, size, gender)


@pytest.mark.parametrize("family", FLARE_TO_PIPE)
@pytest.mark.parametrize("dash", ["3", "4"])
@pytest.mark.parametrize(("letter", "metal"), [("D", "aluminium"), ("", "steel")])
def test_flare_to_pipe(family, dash, letter, metal):
    found = part(f"{family}-{dash}{letter}")
    assert found.material == metal
    pipe = Interface(Form.PIPE, "1/8-27", Gender.MALE)
    assert {end.interface for end in found.ends} == {pipe, flare(f"-{dash}")}
    assert math.degrees(found.turn) == pytest.approx(FLARE_TO_PIPE[family])
    assert [end.clocking for end in found.ends if end.interface == pipe] == [Clocking.MAKE_UP]
    assert [end.clocking for end in found.ends if end.interface != pipe] == [Clocking.FREE]


@pytest.mark.parametrize("family", BULKHEAD)
@pytest.mark.parametrize("dash", DASHES)
def test_a_bulkhead_fitting_takes_its_jam_nut(family, dash):
    found, nut = part(f"{family}-{dash}D"), part(f"AN924-{dash}D")
    assert math.degrees(found.turn) == pytest.approx(BULKHEAD[family])
    assert [end.interface for end in found.ends[:2]] == [flare(f"-{dash}")] * 2
    assert found.ends[2].interface.complement == nut.ends[0].interface
    assert not found.ends[2].flow
    assert not nut.ends[0].flow
    assert found.flow_ends == (0, 1)
    assert nut.category is Category.JAM_NUT


@pytest.mark.parametrize("dash", DASHES)
@pytest.mark.parametrize("letter", ["D", ""])
def test_fitting_nut_sleeve_and_flared_tube_are_a_chain(dash, letter):
    tube = Interface(Form.TUBE_FLARE_37, f"-{dash}", Gender.MALE)
    fitting, nut, sleeve = (interfaces(f"{family}-{dash}{letter}") for family in ("AN815", "AN818", "AN819"))
    assert fitting[1].complement == nut[0]
    assert nut[1].complement == sleeve[0]
    assert sleeve[1].complement == tube
    assert part(f"AN818-{dash}{letter}").category is Category.COUPLING_NUT
    assert part(f"AN819-{dash}{letter}").category is Category.SLEEVE


def test_second_dash_is_the_pipe_size_in_sixteenths():
    """Common practice, no source: AN816-4 goes into 1/8 pipe, AN816-4-4 into 1/4 pipe."""
    assert interfaces("AN816-4D")[0].size == "1/8-27"
    assert interfaces("AN816-4-4D")[0].size == "1/4-18"
    assert interfaces("AN816-6-2")[0].size == "1/8-27"


def test_a_single_dash_means_the_usual_pipe_thread():
    usual = {size.dash: size.usual_pipe_thread for size in catalogue().sizes}
    for family in FLARE_TO_PIPE:
        for dash in DASHES:
            pipe, tube = interfaces(f"{family}-{dash}")
            assert pipe.size == usual[tube.size]


def test_dash_of_a_pipe_part_is_eighths():
    """TM 1-1500-204-23-2, page 4-26: fittings with pipe threads only count in eighths of an inch."""
    assert interfaces("AN913-1D") == [Interface(Form.PIPE, "1/8-27", Gender.MALE)]
    assert interfaces("AN910-2D")[0].size == "1/4-18"


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("AN819-4D", "MS20819-4D"),
        ("AN822-3", "MS20822-3"),
        ("AN823-4D", "MS20823-4D"),
        ("AN825-6", "MS20825-6"),
        ("AN826-4D", "MS20826-4D"),
        ("AN913-1D", "MS20913-1D"),
        ("AN929-4", "AN820-4"),
    ],
)
def test_a_successor_is_the_same_part(old, new):
    assert new in part(old).also_known_as
    assert part(new) is part(old)


def test_successor_standards_are_named():
    """AS5176 follows AN819: read in AS5190A. AS5178 follows AN924: read on the AN sheet."""
    assert "AS5176" in part("AN819-4D").also_known_as
    assert "AS5178" in part("AN924-4D").also_known_as
    assert part("AS5176-4D") is part("AN819-4D")


def test_no_part_stands_twice():
    """No two records may be one real part: same ends in order, turn, metal, row of the list and mass."""
    count = Counter((each.ends, each.turn, each.material, each.category, each.mass.span) for each in PARTS)
    assert [key for key, times in count.items() if times > 1] == []


def test_no_name_means_two_parts():
    names = Counter(each.designation for each in PARTS)
    names.update(alias for each in PARTS for alias in each.also_known_as if "-" in alias)
    assert [name for name, times in names.items() if times > 1] == []


def test_caps_and_plugs_close_one_flow_end():
    caps = [each for each in PARTS if each.category is Category.CAP]
    assert {each.family for each in caps} == {"AN929", "AN806", "AN913", "AN932", "AN814", "MET-P"}
    assert all(len(each.flow_ends) == 1 for each in caps)
    assert {each.family for each in caps if each.dry_ends} == {"AN814", "MET-P"}


def test_low_pressure_and_obsolete_forms_never_go_into_a_brake_line():
    low = {each.family for each in PARTS if not each.brake_pressure}
    assert low == {"AN807", "AN817", "AN838", "AN840", "AN842", "AN844"}
    assert all(each.note for each in PARTS if not each.brake_pressure)


def test_turn_belongs_to_bodies_with_two_flow_ends():
    for each in PARTS:
        is_body = each.category is Category.FITTING and len(each.flow_ends) == 2
        assert (each.turn is not None) == is_body, each.designation


def test_every_end_of_a_part_but_a_loose_one_can_be_closed_or_joined():
    """Each form and size that a fitting offers is offered the other way round too, or is a line's end."""
    offered = {end.interface for each in PARTS for end in each.ends}
    of_lines = {Form.TUBE_FLARE_37, Form.PLAIN_TUBE, Form.HOSE_BEAD, Form.METRIC}
    lonely = {each for each in offered if each.complement not in offered and each.form not in of_lines}
    assert lonely == set()


def test_like_metal_is_there_for_every_flared_part():
    aluminium = {(each.family, each.size) for each in PARTS if each.material == "aluminium"}
    steel = {(each.family, each.size) for each in PARTS if each.material == "steel"}
    assert aluminium <= steel
    assert steel == aluminium


def test_compression_fittings_are_called_by_tube_and_thread():
    found = part("COMP-E-1/4x1/8")
    assert found.material == "brass"
    assert math.degrees(found.turn) == pytest.approx(90)
    assert [end.interface for end in found.ends] == [
        Interface(Form.PIPE, "1/8-27", Gender.MALE),
        Interface(Form.COMPRESSION, "1/4 in", Gender.FEMALE),
    ]
    assert part("COMP-S-6mmx1/8").ends[1].interface.size == "6 mm"
    assert "insert" in found.note


def test_estimated_lengths_are_marked_so():
    assert part("AN816-4D").dimension("overall_length").mark is Mark.ESTIMATE
    assert part("AN816-5D").dimension("overall_length").mark is Mark.READ
    leg = part("AN822-4D").dimension("leg_centre_to_flare_end")
    assert (leg.low / 0.0254, leg.high / 0.0254) == pytest.approx((0.79, 0.99))
    assert part("AN822-4D").dimension("colour") is None


def heavier(one, other):
    first, second = part(one).mass, part(other).mass
    return first.middle > second.middle and first.low > second.low and first.high > second.high


@pytest.mark.parametrize("dash", DASHES)
@pytest.mark.parametrize("letter", ["D", ""])
def test_masses_are_in_a_sensible_order(dash, letter):
    def of(family):
        return f"{family}-{dash}{letter}"

    assert heavier(of("AN822"), of("AN816"))
    assert heavier(of("AN822"), of("AN823"))
    assert heavier(of("AN833"), of("AN822"))
    assert heavier(of("AN833"), of("AN837"))
    assert heavier(of("AN824"), of("AN821"))
    assert heavier(of("AN832"), of("AN815"))
    assert heavier(of("AN818"), of("AN819"))
    assert heavier(of("AN827"), of("AN824"))


def test_steel_is_heavier_than_aluminium():
    steel = {(each.family, each.size): each for each in PARTS if each.material == "steel"}
    for each in PARTS:
        if each.material == "aluminium":
            other = steel[each.family, each.size].mass
            ratio = other.middle / each.mass.middle
            assert 2.7 < ratio < 3.0  # densities of 2.70 to 2.85 and 7.8 to 7.9


@pytest.mark.parametrize("family", ["AN815", "AN818", "AN819", "AN821", "AN832", "AN833", "AN924"])
def test_a_larger_dash_is_heavier(family):
    masses = [part(f"{family}-{dash}D").mass.middle for dash in DASHES]
    assert masses == sorted(masses)
    assert len(set(masses)) == len(masses)


def test_mass_of_a_plain_hexagon_bar():
    """A full bar 10 mm across flats and 20 mm long is 0.866 x 1 x 2 = 1.732 cm3, 13.5 g in steel."""
    sides = {
        "width": exactly("width", Dimension.LENGTH, 0.010, Mark.READ),
        "length": exactly("length", Dimension.LENGTH, 0.020, Mark.READ),
    }
    density = exactly("density", Dimension.DENSITY, 7800, Mark.MEMORY)
    envelope = {"shape": "hexagon", "lengths": ["length"], "width": "width", "fill": "0.5 to 1"}
    mass = estimated_mass("bar", envelope, sides, (), density)
    assert mass.span == pytest.approx((0.5 * 1.7320508e-6 * 7800, 1.7320508e-6 * 7800))
    with pytest.raises(RecordError, match="no dimension 'height'"):
        estimated_mass("bar", {**envelope, "width": "height"}, sides, (), density)


FAMILY = {
    "family": "X1",
    "name": "union",
    "category": "fitting",
    "turn": "0 deg",
    "ends": "male 37-degree flare, male taper pipe thread",
    "sizes": "4 = -4 by 1/8-27",
    "materials": "steel",
    "source": "common-practice",
    "mark": "memory",
    "envelope": {"shape": "round", "lengths": ["length"], "width": "width", "fill": "0.5"},
    "dimensions": [
        {"source": "firmpedal-estimate", "mark": "estimate", "length": "4 = 1 in", "width": "4 = 1/2 in"}
    ],
}
METALS = {"steel": {"name": "steel", "letter": "", "density": "7800 kg/m^3", "source": "x", "mark": "memory"}}


def test_a_family_record_becomes_parts():
    (made,) = family_parts(FAMILY, METALS)
    assert made.designation == "X1-4"
    assert [str(end.interface) for end in made.ends] == [
        "male 37-degree flare -4",
        "male taper pipe thread 1/8-27",
    ]


@pytest.mark.parametrize(
    ("change", "error"),
    [
        ({"sizes": "4 = -4 by 1/8-27 by -4"}, RecordError),
        ({"mark": "guess"}, RecordError),
        ({"source": ""}, RecordError),
        ({"dimensions": FAMILY["dimensions"] * 2}, RecordError),
        ({"dimensions": []}, RecordError),
        ({"ends": "male cone, male taper pipe thread"}, ValueError),
    ],
)
def test_a_bad_family_record_is_refused(change, error):
    with pytest.raises(error):
        list(family_parts({**FAMILY, **change}, METALS))
