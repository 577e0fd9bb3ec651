"""Stock phrases and fluids as builders write them, what comes of them, and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from firmpedal.catalog import StockError, catalogue, fluid, stock
from firmpedal.model.stock import Hose, LineKind, Tube
from firmpedal.quantity import Answer, Mark
from firmpedal.units import to_unit

INCH = 0.0254


def in_inches(value):
    return value.middle / INCH


@pytest.mark.parametrize(
    ("phrase", "material", "outside", "wall", "dash"),
    [
        ("tube 5052-O 1/4 x .035", "5052-O", 0.25, 0.035, "-4"),
        ("tube 5052-O 1/4 in x .035 in", "5052-O", 0.25, 0.035, "-4"),
        ('tube 5052-O 1/4" x .035"', "5052-O", 0.25, 0.035, "-4"),
        ("tube 5052-O 1/4x.035", "5052-O", 0.25, 0.035, "-4"),
        ("tube 5052-O 1/4 X 0.035", "5052-O", 0.25, 0.035, "-4"),
        ("tube 5052-O 1/4 \u00d7 .035", "5052-O", 0.25, 0.035, "-4"),
        ("tube 5052-O .25 x .035 wall", "5052-O", 0.25, 0.035, "-4"),
        ("tube 5052-O, 1/4 OD x .035", "5052-O", 0.25, 0.035, "-4"),
        ("5052-O tube 3/16 x .035", "5052-O", 0.1875, 0.035, "-3"),
        ("5052-O 3/16 x .035", "5052-O", 0.1875, 0.035, "-3"),
        ("tube 5052-0 3/16 x .035", "5052-O", 0.1875, 0.035, "-3"),
        ("tube 5052O 3/16 x .035", "5052-O", 0.1875, 0.035, "-3"),
        ("Tube 6061-T6 3/8 x .049", "6061-T6", 0.375, 0.049, "-6"),
        ("tube 304 annealed 3/16 x .028", "304 annealed", 0.1875, 0.028, "-3"),
        ("tube 304 stainless annealed 3/16 x .028", "304 annealed", 0.1875, 0.028, "-3"),
        ("tube 304-1/8H 1/4 x .020", "304-1/8H", 0.25, 0.020, "-4"),
        ("tube 3003-O 1/2 x .049", "3003-O", 0.5, 0.049, "-8"),
        ("plastic nylon 11 1/4 x .040", "nylon 11", 0.25, 0.040, "-4"),
        ("nylon 11 1/4 x .040", "nylon 11", 0.25, 0.040, "-4"),
        ("plastic nylon 1/4 x .040", "nylon", 0.25, 0.040, "-4"),
        ("nylon tube 1/4 x .040", "nylon", 0.25, 0.040, "-4"),
        ("plastic polyethylene 1/4 x .040", "polyethylene", 0.25, 0.040, "-4"),
    ],
)
def test_tube_phrases(phrase, material, outside, wall, dash):
    tube = stock(phrase, "in")
    assert isinstance(tube, Tube)
    assert tube.material.name == material
    assert in_inches(tube.outside_diameter) == pytest.approx(outside)
    assert in_inches(tube.wall) == pytest.approx(wall)
    assert (tube.dash, tube.phrase, tube.description) == (dash, phrase, phrase)
    assert tube.kind is tube.material.kind
    assert tube.outside_diameter.mark is Mark.MEASURED


@pytest.mark.parametrize(
    ("phrase", "unit", "outside", "wall"),
    [
        ("tube 3003-O 6 mm x 1 mm", "in", 6.0, 1.0),
        ("tube 3003-O 6 x 1", "mm", 6.0, 1.0),
        ("tube 3003-O 6 x 1 mm", "in", 6.0, 1.0),
        ("tube 3003-O 6 mm x 1", "in", 6.0, 1.0),
        ("tube 3003-O 0.6 cm x 1 mm", None, 6.0, 1.0),
    ],
)
def test_metric_tube_has_no_dash(phrase, unit, outside, wall):
    tube = stock(phrase, unit)
    assert tube.outside_diameter.middle * 1000 == pytest.approx(outside)
    assert tube.wall.middle * 1000 == pytest.approx(wall)
    assert tube.dash is None
    assert tube.nominal_size == "6 mm"
    assert not tube.least_bend_radius.known
    assert not tube.support_spacing.known
    assert tube.least_bend_radius.missing


@pytest.mark.parametrize(
    ("phrase", "size"),
    [("nylon 1/4 x .040", "1/4 in"), ("nylon .250 x .040", "1/4 in"), ("nylon 6.35 mm x 1 mm", "1/4 in"),
     ("nylon 3/16 x .030", "3/16 in"), ("nylon 4 mm x 1 mm", "4 mm")],
)  # fmt: skip
def test_nominal_size_is_that_of_compression_fittings(phrase, size):
    assert stock(phrase, "in").nominal_size == size


@pytest.mark.parametrize(
    ("phrase", "specification", "dash"),
    [
        ("hose -4 PTFE braided", "MIL-H-27267", "-4"),
        ("hose -3 PTFE braided", "MIL-H-27267", "-3"),
        ("hose PTFE braided -3", "MIL-H-27267", "-3"),
        ("hose -4 ptfe", "MIL-H-27267", "-4"),
        ("-4 PTFE braided hose", "MIL-H-27267", "-4"),
        ("hose MIL-H-27267 -4", "MIL-H-27267", "-4"),
        ("hose 4 PTFE braided", "MIL-H-27267", "-4"),
        ("hose -4 rubber braided", "MIL-H-8794", "-4"),
        ("hose -4 MIL-H-8794", "MIL-H-8794", "-4"),
        ("hose -4 MIL-H-8788", "MIL-H-8788", "-4"),
    ],
)
def test_hose_phrases(phrase, specification, dash):
    hose = stock(phrase, "in")
    assert isinstance(hose, Hose)
    assert (hose.specification, hose.dash, hose.phrase) == (specification, dash, phrase)
    assert hose.kind is LineKind.HOSE
    assert in_inches(hose.support_spacing) == pytest.approx(24)


def test_bulk_and_mass_of_hose_are_ranges_nobody_published():
    for dash in ("-3", "-4"):
        hose = stock(f"hose {dash} PTFE braided", "in")
        for value in (hose.outside_diameter, hose.mass_per_length, hose.end_mass, hose.expansion):
            assert value.mark is Mark.ESTIMATE
            assert value.low < value.high
    small, large = stock("hose -3 PTFE braided", None), stock("hose -4 PTFE braided", None)
    assert small.mass_per_length.middle < large.mass_per_length.middle
    assert small.outside_diameter.high < large.outside_diameter.high


def test_outside_diameter_of_hose_without_a_source_is_unknown():
    assert not stock("hose -4 MIL-H-8788", "in").outside_diameter.known


@pytest.mark.parametrize("hose", catalogue().hoses, ids=lambda each: each.phrase)
def test_hose_pressures_are_in_order(hose):
    assert hose.operating_pressure.at_most(hose.proof_pressure) is Answer.YES
    assert hose.proof_pressure.at_most(hose.burst_pressure) is Answer.YES
    assert (
        hose.temperature.low < 273.15 - 50 if hose.temperature.known else hose.specification == "MIL-H-8788"
    )
    if hose.outside_diameter.known:
        assert hose.bore.high < hose.outside_diameter.low


def test_yield_is_the_tube_standards_minimum_where_known():
    """Tube minima are recalled from ASTM B210; typical figures and the sheet minimum stand beside them."""
    material = stock("tube 5052-O 1/4 x .035", "in").material
    assert to_unit(material.yield_strength.middle, "ksi") == pytest.approx(10)
    assert material.yield_strength.label == "5052-O yield, drawn tube minimum"
    others = {value.label: value for value in material.other_values}
    assert to_unit(others["5052-O yield, typical"].middle, "ksi") == pytest.approx(13)
    assert to_unit(others["5052-O yield, sheet and plate minimum"].middle, "MPa") == pytest.approx(65)


def test_yield_is_typical_and_says_so_where_no_minimum_is_known():
    material = stock("tube 6061-T4 1/4 x .035", "in").material
    assert material.yield_strength.label == "6061-T4 yield, typical"


def test_yield_lies_below_ultimate_strength():
    for material in catalogue().materials:
        if material.yield_strength.known:
            assert material.yield_strength.at_most(material.ultimate_strength) is not Answer.NO
        assert material.elastic_modulus.known
        assert material.density.known
        assert material.poisson_ratio.high < 0.5


@pytest.mark.parametrize(
    ("phrase", "radius", "spacing"),
    [
        ("tube 5052-O 3/16 x .035", 7 / 16, 12),
        ("tube 5052-O 1/4 x .035", 9 / 16, 13.5),
        ("tube 5052-O 3/8 x .035", 15 / 16, 16.5),
        ("tube 5052-O 1/2 x .035", 1.25, 19),
        ("tube 304 annealed 3/16 x .028", 21 / 32, 14),
        ("tube 304 annealed 1/4 x .028", 7 / 8, 16),
    ],
)
def test_bend_radius_and_support_by_metal(phrase, radius, spacing):
    """AC 43.13-1B, Table 9-2, and the handbook's table of supports, both from memory."""
    tube = stock(phrase, "in")
    assert in_inches(tube.least_bend_radius) == pytest.approx(radius)
    assert in_inches(tube.support_spacing) == pytest.approx(spacing)
    assert tube.least_bend_radius.mark is Mark.MEMORY


def test_stricter_support_figures_are_kept():
    size = catalogue().size("-4")
    spacings = {
        row.basis: (in_inches(row.value), row.used) for row in size.rows if row.name == "support_spacing"
    }
    assert spacings["aluminium"] == (pytest.approx(13.5), True)
    assert spacings["fuel lines"] == (pytest.approx(12), False)


def test_plastic_is_bent_and_rated_only_as_far_as_a_source_goes():
    quarter = stock("nylon 1/4 x .040", "in")
    assert in_inches(quarter.least_bend_radius) == pytest.approx(1.0)
    assert to_unit(quarter.rated_pressure.middle, "psi") == pytest.approx(1000)
    assert quarter.rated_pressure.mark is Mark.MEMORY
    assert not quarter.flare_diameter.known
    assert not stock("nylon 3/16 x .030", "in").least_bend_radius.known


@pytest.mark.parametrize(
    ("phrase", "rated"),
    [
        ("nylon 3/16 x .030", True),  # the same wall for its diameter as 1/4 x .040
        ("nylon 1/8 x .025", True),
        ("nylon 1/4 x .035", False),
        ("polyethylene 1/4 x .040", False),
        ("tube 5052-O 1/4 x .040", False),
    ],
)
def test_rated_pressure_is_for_walls_at_least_as_thick(phrase, rated):
    assert stock(phrase, "in").rated_pressure.known is rated


def test_nylon_of_unknown_grade_has_a_range_of_strengths():
    unknown_grade, known = (stock(f"{name} 1/4 x .040", "in").material for name in ("nylon", "nylon 11 S20"))
    assert unknown_grade.ultimate_strength.low < known.ultimate_strength.low
    assert not unknown_grade.elastic_modulus.exact
    assert known.elastic_modulus.exact
    assert unknown_grade.elastic_modulus.mark is Mark.ESTIMATE
    assert known.elastic_modulus.mark is Mark.READ


def test_strength_kept_by_nylon_falls_with_heat():
    """Burst of plasticised tube, as read: 100 % at 23 C, 80 % at 40 C, 37 % at 100 C."""
    kept = stock("nylon 1/4 x .040", "in").material.strength_kept
    assert [(round(kelvin - 273.15), share) for kelvin, share in kept] == [
        (23, pytest.approx(1.0)),
        (40, pytest.approx(0.8)),
        (100, pytest.approx(0.37)),
    ]
    assert stock("tube 5052-O 1/4 x .035", "in").material.strength_kept == ()


def test_materials_that_never_hold_brake_pressure():
    never = {material.name for material in catalogue().materials if not material.brake_pressure}
    assert never == {"1100-H14", "3003-H14", "polyethylene", "polyethylene LDPE", "polyethylene HDPE"}


@pytest.mark.parametrize(
    ("phrase", "message", "suggestion"),
    [
        ("tube 5052-Q 1/4 x .035", "did you mean 5052-O", "5052-O"),
        ("tube 304 3/16 x .028", "did you mean 304 annealed", "304 annealed"),
        ("tube 1/4 x .035", "no material of a line is named", ""),
        ("tube unobtainium 1/4 x .035", "choose from: 1100-H14", ""),
        ("tube 5052-O 1/4", "outside diameter and wall", ""),
        ("tube 5052-O 1/4 x .125", "leaves no bore", ""),
        ("tube 5052-O 1/4 x .2", "leaves no bore", ""),
        ("tube 5052-O 0 x 0", "no size of a tube", ""),
        ("tube 5052-O 1/0 x .035", "divides by nothing", ""),
        ("plastic 5052-O 1/4 x .035", "no plastic", ""),
        ("hose -7 PTFE braided", "there is no -7", ""),
        ("hose PTFE braided", "the dash size is missing", ""),
        ("hose -4 PTFE brided", "did you mean", "PTFE braided"),
        ("", "write what the line is made of", ""),
        ("x" * 300, "write what the line is made of", ""),
        ("garden hose", "choose from: PTFE braided", ""),
    ],
)
def test_phrases_that_are_refused(phrase, message, suggestion):
    with pytest.raises(StockError, match=message) as caught:
        stock(phrase, "in")
    assert caught.value.suggestion == suggestion


def test_a_bare_dimension_without_a_declared_unit_is_refused():
    with pytest.raises(StockError, match="has no unit"):
        stock("tube 5052-O 1/4 x .035", None)


def test_a_suggestion_is_itself_understood():
    with pytest.raises(StockError) as caught:
        stock("tube 5052 1/4 x .035", "in")
    assert stock(f"tube {caught.value.suggestion} 1/4 x .035", "in").material.name == "5052-O"


@pytest.mark.parametrize(
    ("spelling", "name"),
    [
        ("MIL-PRF-5606", "MIL-PRF-5606"),
        ("mil-h-5606", "MIL-PRF-5606"),
        ("5606", "MIL-PRF-5606"),
        ("MIL PRF 83282", "MIL-PRF-83282"),
        ("DOT 4", "DOT 4"),
        ("dot4", "DOT 4"),
        ("silicone", "DOT 5"),
    ],
)
def test_fluids(spelling, name):
    assert fluid(spelling).name == name


def test_the_safer_flash_point_is_used():
    """Recalled 82 C is under the 93.3 C that was read, so it is the one in use."""
    assert fluid("MIL-PRF-5606").flash_point.middle == pytest.approx(273.15 + 82)


def test_what_no_source_gives_of_a_fluid_is_unknown():
    assert not fluid("DOT 4").flash_point.known
    assert not fluid("MIL-PRF-5606").boiling_point.known


@pytest.mark.parametrize(
    ("name", "suggestion"), [("MIL-PFR-5606", "MIL-PRF-5606"), ("MIL-PRF-5608", ""), ("DOT 44", ""), ("", "")]
)
def test_unknown_fluids(name, suggestion):
    with pytest.raises(StockError) as caught:
        fluid(name)
    assert caught.value.suggestion == suggestion
    assert "MIL-PRF-5606" in caught.value.choices


UNITS = st.sampled_from(["in", "mm", None])
MATERIALS = st.sampled_from(
    ["5052-O", "nylon", "11", "304", "annealed", "PTFE", "braided", "tube", "hose", "plastic"]
)
SIZES = st.sampled_from(
    ["1/4", "x", ".035", "-4", "in", "mm", "6", "1/0", "x.", "OD", "\u00d7", "-", "\u00bd"]
)
WORDS = MATERIALS | SIZES


def made_or_refused(call, *arguments):
    """Give what a call makes, or the StockError it raises."""
    try:
        return call(*arguments)
    except StockError as error:
        return error


@given(st.text(max_size=220), UNITS)
def test_any_text_is_stock_or_a_stock_error(text, unit):
    made = made_or_refused(stock, text, unit)
    assert isinstance(made, Tube | Hose) or str(made).isprintable()


@given(st.lists(WORDS, max_size=10).map(" ".join), UNITS)
def test_any_words_of_the_trade_are_stock_or_a_stock_error(text, unit):
    made = made_or_refused(stock, text, unit)
    if isinstance(made, Tube):
        assert made.phrase == text
        assert 0 < 2 * made.wall.high < made.outside_diameter.low
    elif isinstance(made, Hose):
        assert made.phrase == text
    else:
        assert str(made).isprintable()


@given(st.text(max_size=220))
def test_any_text_is_a_fluid_or_a_stock_error(text):
    made = made_or_refused(fluid, text)
    assert made in catalogue().fluids or str(made).isprintable()


@pytest.mark.parametrize("phrase", ["nylon", "nylon 1/4", "nylon 1/4 tube", "plastic", "plastic 1/4"])
def test_who_wants_plastic_gets_an_example_of_plastic(phrase):
    with pytest.raises(StockError, match=r"for plastic: such as plastic nylon 1/4 x \.040$"):
        stock(phrase, "in")


@pytest.mark.parametrize("phrase", ["", "1/4"])
def test_who_names_no_kind_gets_one_example_of_each(phrase):
    with pytest.raises(StockError) as caught:
        stock(phrase, "in")
    assert all(example in str(caught.value) for example in caught.value.choices)
    assert len({stock(example, "in").kind for example in caught.value.choices}) == 3
