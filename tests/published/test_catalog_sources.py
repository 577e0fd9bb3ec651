"""The catalogue's figures beside those printed in the sources it names, each in the source's own unit."""

import pytest
from exact_units import INCH

from firmpedal.catalog import catalogue, fluid, stock
from firmpedal.units import to_unit

KNOWN = catalogue()


# TM 1-1500-204-23-2, Table 4-9: the dash number is the outside diameter in sixteenths of an inch.
OUTSIDE_DIAMETER = {"-2": "0.125 in", "-3": "0.1875 in", "-4": "0.25 in", "-5": "0.3125 in",
                    "-6": "0.375 in", "-8": "0.5 in"}  # fmt: skip


@pytest.mark.parametrize(("dash", "printed"), OUTSIDE_DIAMETER.items())
def test_outside_diameter_of_a_dash(case, dash, printed):
    ours = KNOWN.size(dash).outside_diameter
    case("tm-1-1500-204", f"outside diameter of {dash}", printed, ours.middle / INCH, place="Table 4-9")
    assert ours.exact
    assert ours.middle / INCH * 16 == pytest.approx(int(dash[1:]))


# AS5169A, title and Table 1A: threads by dash; a thread's name begins with its major diameter in inches.
THREAD = {
    "-2": ("5/16-24", "0.3125 in"),
    "-3": ("3/8-24", "0.375 in"),
    "-4": ("7/16-20", "0.4375 in"),
    "-5": ("1/2-20", "0.5 in"),
    "-6": ("9/16-18", "0.5625 in"),
    "-8": ("3/4-16", "0.75 in"),
}


@pytest.mark.parametrize("dash", THREAD)
def test_thread_of_a_dash(case, dash):
    name, printed = THREAD[dash]
    assert KNOWN.size(dash).thread == name
    thread = KNOWN.thread(name)
    assert thread.dash == dash
    ours = thread.value("major_diameter").middle / INCH
    case("as5169a", f"major diameter of the thread of {dash}", printed, ours, place="Table 1A")


# ASME B1.20.1: major diameter, E1, L1, L2 of the taper pipe threads.
PIPE = {
    "1/8-27": ("0.405 in", "0.3736 in", "0.1615 in", "0.2639 in"),
    "1/4-18": ("0.540 in", "0.49163 in", "0.2278 in", "0.4018 in"),
    "3/8-18": ("0.675 in", "0.62701 in", "0.240 in", "0.4078 in"),
}
LENGTHS = ("major_diameter", "diameter_at_hand_tight_plane", "hand_tight_length", "effective_length")


@pytest.mark.parametrize("name", PIPE)
def test_taper_pipe_thread(case, name):
    thread = KNOWN.thread(name)
    for length, printed in zip(LENGTHS, PIPE[name], strict=True):
        ours = thread.value(length).middle / INCH
        case("asme-b1-20-1", f"{length.replace('_', ' ')} of {name}", printed, ours)


@pytest.mark.parametrize("name", PIPE)
def test_taper_pipe_thread_keeps_the_formulas_of_the_standard(name):
    """ASME B1.20.1: E0 = D - (0.05 D + 1.1) p, E1 = E0 + L1/16, L2 = (0.8 D + 6.8) p."""
    thread = KNOWN.thread(name)
    major, pitch, small, plane, hand, effective = (
        thread.value(length).middle / INCH
        for length in ("major_diameter", "pitch", "diameter_at_small_end", "diameter_at_hand_tight_plane",
                       "hand_tight_length", "effective_length")
    )  # fmt: skip
    assert small == pytest.approx(major - (0.05 * major + 1.1) * pitch, abs=0.5e-5)
    assert plane == pytest.approx(small + hand / 16, abs=1e-5)
    assert effective == pytest.approx((0.8 * major + 6.8) * pitch, abs=0.5e-4)


# Lengths by part as the sheets print them, in inches.
PRINTED_DIMENSIONS = [
    ("as5194e", "AN816-4-4D", "overall_length", "1.375 in"),
    ("as5194e", "AN816-5D", "overall_length", "1.141 in"),
    ("as5194e", "AN816-6D", "overall_length", "1.375 in"),
    ("as5194e", "AN816-6-2D", "overall_length", "1.187 in"),
    ("as5194e", "AN816-8D", "overall_length", "1.500 in"),
    ("as5194e", "AN816-6-8", "bore_at_pipe_end", "0.532 in"),
    ("an818-rev20", "AN818-3", "overall_length", "0.604 in"),
    ("an818-rev20", "AN818-3D", "hex_across_flats", "0.437 in"),
    ("an818-rev20", "AN818-4D", "hex_across_flats", "0.562 in"),
    ("an818-rev20", "AN818-8D", "hex_across_flats", "0.875 in"),
    ("an818-rev20", "AN818-4D", "tube_hole_diameter", "0.305 in"),
    ("an924-rev13", "AN924-3D", "hex_across_flats", "0.625 in"),
    ("an924-rev13", "AN924-4D", "hex_across_flats", "0.688 in"),
    ("an924-rev13", "AN924-4D", "thickness", "0.250 in"),
    ("an924-rev13", "AN924-4D", "across_corners_least", "0.771 in"),
    ("an924-rev13", "AN924-8", "bearing_face_diameter", "0.937 in"),
    ("an929-rev13", "AN929-4D", "overall_length", "0.531 in"),
    ("an929-rev13", "AN929-8D", "overall_length", "0.750 in"),
    ("as5169a", "AN814-4D", "overall_length", "0.625 in"),
]


@pytest.mark.parametrize(("source", "designation", "name", "printed"), PRINTED_DIMENSIONS)
def test_dimension_as_the_sheet_prints_it(case, source, designation, name, printed):
    value = KNOWN.part(designation).dimension(name)
    assert value.source == source
    assert value.mark.word == "read"
    case(source, f"{name.replace('_', ' ')} of {designation}", printed, value.middle / INCH)


# Torques in use, in lbf in, lowest and highest.
TORQUES = [
    ("maintenance-manual-torque", "coupling nut", "aluminium", "-3", "25 lbf in", "35 lbf in"),
    ("maintenance-manual-torque", "coupling nut", "aluminium", "-4", "50 lbf in", "65 lbf in"),
    ("maintenance-manual-torque", "coupling nut", "aluminium", "-6", "110 lbf in", "130 lbf in"),
    ("maintenance-manual-torque", "coupling nut", "steel", "-3", "95 lbf in", "105 lbf in"),
    ("maintenance-manual-torque", "coupling nut", "steel", "-4", "135 lbf in", "150 lbf in"),
    ("navedtra-14018", "hose end", "aluminium", "-4", "50 lbf in", "65 lbf in"),
    ("navedtra-14018", "hose end", "steel", "-3", "95 lbf in", "105 lbf in"),
    ("tm-55-1520-240", "hose end", "steel", "-4", "100 lbf in", "120 lbf in"),
]


@pytest.mark.parametrize(("source", "joint", "tube", "dash", "low", "high"), TORQUES)
def test_torque_in_use(case, source, joint, tube, dash, low, high):
    (row,) = [
        each
        for each in KNOWN.torques
        if each.preferred and (each.joint, each.tube, each.dash) == (joint, tube, dash)
    ]
    assert row.torque.source == source
    case(source, f"least torque, {joint} {dash}, {tube}", low, to_unit(row.torque.low, "lbf in"))
    case(source, f"greatest torque, {joint} {dash}, {tube}", high, to_unit(row.torque.high, "lbf in"))


# Strengths in ksi and their bases.
STRENGTHS = [
    ("mil-t-8504b", "304 annealed", "yield_strength", "30 ksi", "read"),
    ("mil-t-8504b", "304 annealed", "ultimate_strength", "75 ksi", "read"),
    ("kutz-materials", "3003-H14", "yield_strength", "21 ksi", "read"),
    ("kutz-materials", "3003-O", "fatigue_strength", "7 ksi", "read"),
    ("astm-b210", "5052-O", "yield_strength", "10 ksi", "memory"),
    ("astm-b210", "3003-O", "yield_strength", "5 ksi", "memory"),
    ("astm-b210", "6061-T6", "ultimate_strength", "42 ksi", "memory"),
]


@pytest.mark.parametrize(("source", "name", "strength", "printed", "how"), STRENGTHS)
def test_strength_in_use(case, source, name, strength, printed, how):
    material = next(each for each in KNOWN.materials if each.name == name)
    value = getattr(material, strength)
    assert (value.source, value.mark.word) == (source, how)
    case(source, f"{strength.replace('_', ' ')} of {name}", printed, to_unit(value.middle, "ksi"), how=how)


# The data sheet of polyamide 11 tube grades prints flexural moduli in kgf/mm2.
MODULI = [("nylon 11 S40", -40, "190"), ("nylon 11 S40", 20, "35"), ("nylon 11 S40", 80, "17"),
          ("nylon 11 S20", -40, "150"), ("nylon 11 S20", 20, "50"), ("nylon 11 S20", 80, "19"),
          ("nylon 11 SR", -40, "135"), ("nylon 11 SR", 20, "100"), ("nylon 11 SR", 80, "19")]  # fmt: skip


@pytest.mark.parametrize(("name", "celsius", "printed"), MODULI)
def test_modulus_of_nylon_by_temperature(case, name, celsius, printed):
    material = next(each for each in KNOWN.materials if each.name == name)
    moduli = {round(kelvin - 273.15): value for kelvin, value in material.modulus_at}
    ours = moduli[celsius].middle / 9.80665e6
    case("polyamide-tube-data", f"modulus of {name} at {celsius} C", f"{printed} kgf/mm2", ours)


@pytest.mark.parametrize("name", ["nylon", "nylon 11", "nylon 12"])
@pytest.mark.parametrize("celsius", [-40, 20, 80])
def test_nylon_of_unknown_grade_is_as_stiff_as_one_of_its_grades(name, celsius):
    """From the softest to the stiffest of the sheet; cold the plasticised grade is the stiffest."""
    moduli = {
        round(kelvin - 273.15): value
        for kelvin, value in stock(f"{name} 1/4 x .040", "in").material.modulus_at
    }
    printed = [float(words) for _, warmth, words in MODULI if warmth == celsius]
    found = [to_unit(bound, "MPa") / 9.80665 for bound in moduli[celsius].span]
    assert found == pytest.approx([min(printed), max(printed)], abs=0.05)


def test_what_the_sums_of_the_trade_take_lies_within():
    """480 MPa is a rounded figure of grade S20."""
    low, high = stock("nylon 1/4 x .040", "in").material.elastic_modulus.span
    assert to_unit(low, "MPa") < 480 < to_unit(high, "MPa")


# AC 43.13-1B, Table 9-3: bore, outside diameter, pressures and bend radius of rubber hose.
RUBBER = {
    "-3": ("0.125", "0.45", "3000", "6000", "12000", "3.0"),
    "-4": ("0.1875", "0.52", "3000", "6000", "12000", "3.0"),
    "-6": ("0.3125", "0.67", "2000", "4500", "9000", "4.0"),
    "-8": ("0.40625", "0.77", "2000", "4000", "8000", "4.63"),
}


@pytest.mark.parametrize("dash", RUBBER)
def test_rubber_hose(case, dash):
    hose = stock(f"hose {dash} rubber braided", "in")
    values = (hose.bore, hose.outside_diameter, hose.operating_pressure, hose.proof_pressure,
              hose.burst_pressure, hose.least_bend_radius)  # fmt: skip
    units = ("in", "in", "psi", "psi", "psi", "in")
    for value, printed, unit in zip(values, RUBBER[dash], units, strict=True):
        ours = to_unit(value.middle, unit)
        case("ac-43-13-1b", value.label, f"{printed} {unit}", ours, place="Table 9-3")


# TM 1-1500-204-23-2, Table 4-22: what a straight, a 45 and a 90 degree end take off a PTFE hose.
CUTOFFS = {"-3": ("1.40", "2.16", "1.72"), "-4": ("1.48", "2.36", "1.82"), "-6": ("1.62", "2.58", "2.06")}


@pytest.mark.parametrize("dash", CUTOFFS)
def test_end_cutoff_of_ptfe_hose(case, dash):
    hose = stock(f"hose {dash} PTFE braided", "in")
    assert [angle for angle, _ in hose.end_cutoff] == [0, 45, 90]
    for (angle, value), printed in zip(hose.end_cutoff, CUTOFFS[dash], strict=True):
        name = f"cut-off of {dash}, end of {angle} degrees"
        case("tm-1-1500-204", name, f"{printed} in", value.middle / INCH, place="Table 4-22")


# MIL-DTL-13719G, Table III: regular limits of expansion at 1,000 psi, in cm3 per foot.
EXPANSION = {"-3": "0.66", "-4": "0.86", "-5": "1.04", "-8": "1.04"}


@pytest.mark.parametrize("dash", EXPANSION)
def test_expansion_limit_of_hose(case, dash):
    hose = stock(f"hose {dash} PTFE braided", "in")
    foot = 12 * INCH
    ours = hose.expansion.high * foot * 1e6
    case("mil-dtl-13719g", f"expansion limit of {dash} at 1,000 psi", f"{EXPANSION[dash]} cm3/ft", ours)
    assert hose.expansion.low == 0
    assert to_unit(hose.expansion_pressure.middle, "psi") == pytest.approx(1000)


# The table of fluids: bulk modulus in psi, expansion of volume per degree Fahrenheit.
FLUIDS = {"MIL-PRF-5606": ("260,000 psi", "0.00046 /degF"), "MIL-PRF-83282": ("300,000 psi", "0.00046 /degF"),
          "DOT 5": ("150,000 psi", "0.00054 /degF")}  # fmt: skip


@pytest.mark.parametrize("name", FLUIDS)
def test_fluid(case, name):
    known = fluid(name)
    thousand = to_unit(known.bulk_modulus.middle, "psi") / 1000
    printed = FLUIDS[name][0].replace(",000", "").replace("psi", "thousand psi")
    case("fluid-bulk-modulus", f"bulk modulus of {name}", printed, thousand)
    ours = known.thermal_expansion.middle / 1.8
    case("fluid-bulk-modulus", f"expansion of {name}", FLUIDS[name][1], ours)
