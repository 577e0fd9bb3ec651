"""What a measured port, fitting or tube can be.

Figures of ISO 261, ISO 965-1, ISO 228-1 and ASME B1.1 are from memory; those of ASME B1.20.1 are
the printed ones.
"""

import json
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from typer.testing import CliRunner

from firmpedal.cli.main import app
from firmpedal.decide.engagement import Depth
from firmpedal.decide.identify import CALLIPERS, Measured, identify
from firmpedal.decide.identify_reading import Asked, display_of_asked, heard
from firmpedal.decide.tell_apart import difference
from firmpedal.decide.thread_ends import Quantity, known_threads, known_tubes
from firmpedal.quantity import Answer, Mark, exactly
from firmpedal.report.identify import identify_sheet
from firmpedal.report.sheet import Paragraph, Sum
from firmpedal.units import Dimension

INCH, MM, DEGREE = 0.0254, 0.001, math.pi / 180
NPT, M10 = "1/8-27 NPT, taper pipe", "M10 x 1, metric parallel"
FLARE_37, FLARE_45 = "7/16-20 UNJF-3, 37-degree flare -4", "7/16-20, 45-degree flare for 1/4 in tube"


def length(metres):
    return exactly("measured", Dimension.LENGTH, metres, Mark.MEASURED)


def angle(degrees):
    return exactly("measured", Dimension.ANGLE, degrees * DEGREE, Mark.MEASURED)


def number(plain):
    return exactly("measured", Dimension.NUMBER, plain, Mark.MEASURED)


def names(question):
    return {judged.candidate.name for judged in question.remaining}


def thread(**measured):
    return identify(Measured(**measured)).questions[0]


def by_name(name):
    return next(each for each in (*known_threads(), *known_tubes()) if each.name == name)


def trial(one, other, **measured):
    return difference(by_name(one), by_name(other), Measured(**measured)).test


# Which thread


@pytest.mark.parametrize(
    ("name", "diameter", "pitch"),
    [
        (NPT, 0.400 * INCH, INCH / 27),
        ("1/4-18 NPT, taper pipe", 0.530 * INCH, INCH / 18),
        (M10, 9.90 * MM, 1.0 * MM),  # 6g: 9.794 to 9.974
        ("M12 x 1.5, metric parallel", 11.85 * MM, 1.5 * MM),
        ("G 1/8 (28 threads per inch), British parallel pipe", 9.6 * MM, INCH / 28),
        ("R 1/8 (28 threads per inch), British taper pipe", 9.7 * MM, INCH / 28),
        (FLARE_37, 0.433 * INCH, INCH / 20),
        ("9/16-18 UNJF-3, 37-degree flare -6", 0.558 * INCH, INCH / 18),
    ],
)
def test_thread_is_found_by_diameter_and_pitch(name, diameter, pitch):
    assert name in names(thread(outside_diameter=length(diameter), pitch=length(pitch)))


def test_pipe_thread_and_metric_are_told_apart_by_diameter_and_pitch():
    found = thread(outside_diameter=length(0.400 * INCH), pitch=length(INCH / 27))
    assert names(found) == {NPT}
    assert names(thread(outside_diameter=length(9.9 * MM), pitch=length(MM))) == {M10}


def test_refusal_says_what_does_not_fit():
    found = thread(outside_diameter=length(0.400 * INCH), pitch=length(INCH / 27))
    metric = next(each for each in found.ruled_out if each.candidate.name == M10)
    assert Quantity.PITCH in {fit.quantity for fit in metric.refusals}
    fit = next(fit for fit in metric.fits if fit.quantity is Quantity.PITCH)
    assert fit.off.middle == pytest.approx(MM - INCH / 27, rel=1e-6)  # 0.059 mm
    assert fit.off.step is not None  # the figure carries its sum


def test_taper_rules_out_parallel_threads_and_the_other_way_round():
    tapered = names(thread(outside_diameter=length(9.9 * MM), taper=Answer.YES))
    parallel = names(thread(outside_diameter=length(9.9 * MM), taper=Answer.NO))
    assert NPT in tapered
    assert M10 in parallel
    assert not tapered & parallel


def test_female_port_by_its_inside_diameter():
    """Inside the crests of 1/8 NPT at the face: E1 - .8/27 = 0.344 in; of M10 x 1: 8.917 to 9.153 mm (6H)."""
    assert NPT in names(thread(inside_diameter=length(0.344 * INCH), pitch=length(INCH / 27)))
    found = names(thread(inside_diameter=length(9.0 * MM), pitch=length(MM)))
    assert M10 in found
    assert NPT not in found


def test_seat_angle_decides_between_equal_threads():
    same = {"outside_diameter": length(0.434 * INCH), "pitch": length(INCH / 20)}
    assert names(thread(**same)) == {FLARE_37, FLARE_45}
    assert names(thread(**same, seat_angle=angle(37))) == {FLARE_37}
    assert names(thread(**same, seat_angle=angle(45))) == {FLARE_45}


def test_a_tape_leaves_more_candidates_than_callipers():
    fine = names(thread(outside_diameter=length(10 * MM)))
    coarse = names(thread(outside_diameter=length(10 * MM), accuracy=length(INCH / 32)))
    assert fine < coarse


def test_nothing_fits_between_the_sizes():
    found = thread(outside_diameter=length(18.2 * MM))
    assert found.remaining == ()
    assert found.ruled_out


# A thread measured within its limits is always a candidate

# Least and largest over the crests and the pitch, from memory of ISO 965-1 6g, ISO 228-1 A, ASME B1.1 3A.
EXTERNAL = {
    M10: (9.794 * MM, 9.974 * MM, MM),
    "M8 x 1, metric parallel": (7.794 * MM, 7.974 * MM, MM),
    "M10 x 1.25, metric parallel": (9.760 * MM, 9.972 * MM, 1.25 * MM),
    "M12 x 1.5, metric parallel": (11.732 * MM, 11.968 * MM, 1.5 * MM),
    "M14 x 1.5, metric parallel": (13.732 * MM, 13.968 * MM, 1.5 * MM),
    "G 1/8 (28 threads per inch), British parallel pipe": (9.514 * MM, 9.728 * MM, INCH / 28),
    "G 1/4 (19 threads per inch), British parallel pipe": (12.907 * MM, 13.157 * MM, INCH / 19),
    "3/8-24 UNJF-3, 37-degree flare -3": (0.3678 * INCH, 0.3750 * INCH, INCH / 24),
    FLARE_37: (0.4294 * INCH, 0.4375 * INCH, INCH / 20),
    "9/16-18 UNJF-3, 37-degree flare -6": (0.5538 * INCH, 0.5625 * INCH, INCH / 18),
    NPT: (0.3931 * INCH, 0.4096 * INCH, INCH / 27),  # E0 + .8 p, and L2/16 more
}
unit = st.floats(-1, 1)


@settings(max_examples=60)
@given(st.sampled_from(sorted(EXTERNAL)), st.floats(0, 1), unit, unit)
def test_thread_within_its_limits_is_among_the_candidates(name, place, off, pitch_off):
    low, high, pitch = EXTERNAL[name]
    accuracy = CALLIPERS.middle
    diameter = low + place * (high - low) + off * accuracy
    found = thread(outside_diameter=length(diameter), pitch=length(pitch + pitch_off * accuracy / 6))
    assert name in names(found)


@pytest.mark.parametrize("name", EXTERNAL)
@pytest.mark.parametrize("end", [0, 1])
def test_thread_at_its_limit_needs_no_measuring_tolerance(name, end):
    found = thread(outside_diameter=length(EXTERNAL[name][end]), accuracy=length(0.001 * MM))
    assert name in names(found)


@settings(max_examples=60)
@given(st.sampled_from(known_threads()), st.floats(0, 1), unit)
def test_every_candidate_fits_itself(candidate, place, off):
    outside = candidate.value(Quantity.OUTSIDE)
    diameter = outside.low + place * (outside.high - outside.low) + off * CALLIPERS.middle
    found = thread(
        outside_diameter=length(diameter),
        pitch=candidate.value(Quantity.PITCH),
        taper=candidate.taper,
        seat_angle=candidate.value(Quantity.SEAT),
    )
    assert candidate.name in names(found)
    assert all(each.refusals for each in found.ruled_out)


@settings(max_examples=40)
@given(st.floats(6 * MM, 22 * MM), st.floats(0.01 * MM, MM), st.floats(1, 5))
def test_worse_accuracy_never_rules_out_more(diameter, accuracy, factor):
    fine = names(thread(outside_diameter=length(diameter), accuracy=length(accuracy)))
    coarse = names(thread(outside_diameter=length(diameter), accuracy=length(accuracy * factor)))
    assert fine <= coarse


# Which test tells two apart


def test_ten_pitches_of_a_metric_thread_against_a_british_one():
    """10 pitches: 10 mm against 254/28 = 9.07 mm."""
    found = trial(M10, "G 1/8 (28 threads per inch), British parallel pipe")
    assert found.quantity is Quantity.PITCH
    assert (found.over, found.first.middle, found.second.middle) == (
        10,
        pytest.approx(10 * MM),
        pytest.approx(254 / 28 * MM),
    )


def test_pipe_thread_against_metric_by_pitch_or_taper():
    """L2 = .2639 in holds 6 pitches of 1 mm; the taper gives .2639/16 = .0165 in."""
    both = difference(by_name(NPT), by_name(M10), Measured())
    tests = {each.quantity: each for each in (both.test, *both.others)}
    assert tests[Quantity.PITCH].over == 6
    assert tests[Quantity.PITCH].difference.middle == pytest.approx(6 * (MM - INCH / 27))
    assert tests[Quantity.TAPER].first.middle == pytest.approx(0.2639 / 16 * INCH)
    assert both.test.clarity == max(each.clarity for each in tests.values())


def test_six_millimetres_against_a_quarter_inch():
    """0.35 mm between the names, less the tolerance of both tubes, .003 in each."""
    found = trial("6 mm tube", "1/4 in tube (-4)")
    assert found.quantity is Quantity.TUBE
    assert found.difference.middle == pytest.approx(0.35 * MM - 2 * 0.003 * INCH, abs=1e-9)
    assert found.decides
    assert not trial("6 mm tube", "1/4 in tube (-4)", accuracy=length(INCH / 64)).decides
    assert trial("6 mm tube", "1/4 in tube (-4)", accuracy=length(0.09 * MM)).decides  # twice .09 is less
    assert not trial("6 mm tube", "1/4 in tube (-4)", accuracy=length(0.11 * MM)).decides  # twice .11 is more


def test_flares_by_a_template():
    """A cone from 1/4 in to .354 in, its side .052/sin 37 = .0864 in long; 8 degrees off lift .0120 in."""
    found = trial(FLARE_37, FLARE_45)
    assert found.quantity is Quantity.SEAT
    assert found.difference.middle == pytest.approx(8 * DEGREE)
    assert found.gap.low < 0.0120 * INCH < found.gap.high


@settings(max_examples=60)
@given(st.sampled_from(known_threads()), st.sampled_from(known_threads()))
def test_swapping_two_candidates_swaps_the_test(one, other):
    there, back = difference(one, other, Measured()).test, difference(other, one, Measured()).test
    if there is None:
        assert back is None
        return
    assert back.clarity == pytest.approx(there.clarity)
    assert back.difference.span == pytest.approx(there.difference.span)
    if back.quantity is there.quantity:
        assert (back.first.span, back.second.span) == (there.second.span, there.first.span)


def test_no_test_between_a_thread_and_itself():
    assert all(difference(each, each, Measured()).test is None for each in known_threads())


# Turns by hand


def turns(count, **measured):
    found = identify(Measured(turns=number(count), **measured)).engagements
    return {each.thread.name: each for each in found}


@pytest.mark.parametrize(
    ("name", "owed"), [("1/8-27", 4.36), ("1/4-18", 4.10), ("3/8-18", 4.32), ("1/2-14", 4.48)]
)
def test_turns_owed_are_the_printed_ones(name, owed):
    """ASME B1.20.1, L1 in turns of thread; 1/2 is from memory."""
    assert turns(4)[name].owed.middle == pytest.approx(owed, abs=0.005)


@pytest.mark.parametrize(
    ("count", "depth"),
    [
        (1.5, Depth.TOO_SHORT),
        (2.3, Depth.TOO_SHORT),
        (2.5, Depth.SHORT),
        (3.5, Depth.RIGHT),
        (4.36, Depth.RIGHT),
        (5.3, Depth.RIGHT),
        (6, Depth.DEEP),
        (6.5, Depth.TOO_DEEP),
    ],
)
def test_turns_of_an_eighth_pipe_thread(count, depth):
    assert turns(count)["1/8-27"].depth is depth


def test_turns_are_judged_for_what_fits_only():
    assert set(turns(4, outside_diameter=length(0.400 * INCH), pitch=length(INCH / 27))) == {"1/8-27"}
    assert turns(4, outside_diameter=length(9.9 * MM), pitch=length(MM)) == {}


# On the command line


def said(*words):
    result = CliRunner(env={"COLUMNS": "200"}).invoke(app, ["identify", *words])
    return result.exit_code, " ".join(result.output.split())


def test_under_tapped_port_is_said():
    code, text = said("--outside-diameter", "0.400in", "--threads", "27", "--turns", "1-1/2")
    assert code == 1
    assert "Only one thread in the catalogue fits: 1/8-27 NPT" in text
    assert "hand tight after 1-1/2 turns where 4.36 are owed" in text
    assert "Sealant will not cure it" in text


def test_good_thread_ends_with_nought():
    code, text = said("--outside-diameter", "0.400in", "--threads", "27", "--turns", "4")
    assert code == 0
    assert "as it should" in text


def test_inches_and_millimetres_say_the_same():
    inch = json.loads(said("--outside-diameter", "0.4in", "--threads", "27", "--json")[1])
    metric = json.loads(said("--outside-diameter", "10.16mm", "--pitch", "0.9407407407mm", "--json")[1])
    found = [[each["name"] for each in data["questions"][0]["candidates"]] for data in (inch, metric)]
    assert found[0] == found[1] == [NPT]


def test_nothing_fits_says_what_to_measure_again():
    code, text = said("--outside-diameter", "18.2mm")
    assert code == 1
    assert "No thread in the catalogue fits" in text
    assert "Measure again: the outside diameter" in text


def test_json_holds_the_sum_of_it():
    code, text = said("--tube", "6mm", "--outside-diameter", "10mm", "--taper", "no", "--json")
    data = json.loads(text)
    assert code == 0
    assert [each["subject"] for each in data["questions"]] == ["thread", "tube"]
    assert data["questions"][1]["candidates"][0]["name"] == "6 mm tube"
    fits = data["questions"][0]["ruled_out"][0]["fits"]
    assert {"quantity", "answer", "measured", "expected", "mark", "off", "allowed"} == set(fits[0])


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ([], "Nothing was measured"),
        (["--outside-diameter", "0.4"], "--outside-diameter: '0.4' has no unit"),
        (["--outside-diameter", "0in"], "has to be more than nothing"),
        (["--threads", "27", "--pitch", "1mm"], "not both"),
        (["--taper", "perhaps"], "none of yes, no, unknown"),
        (["--seat-angle", "74deg"], "half of 74deg"),
        (["--turns", "many"], "--turns"),
    ],
)
def test_figures_that_cannot_be_used(words, message):
    code, text = said(*words)
    assert code == 2
    assert message in text


# A slip of the unit is told at the figure


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["--outside-diameter", "10 in"], "--outside-diameter: 10 in is far wider"),
        (["--outside-diameter", "0.4 mm"], "--outside-diameter: 0.4 mm is far narrower"),
        (["--tube", "6 in"], "--tube: 6 in is far wider"),
        (["--threads", "1.25"], "say 1.25 mm"),
        (["--pitch", "27 mm"], "--pitch: 27 mm from crest to crest is far coarser"),
    ],
)
def test_figures_in_another_unit(words, message):
    code, text = said(*words)
    assert code == 2
    assert message in text


def test_every_slip_is_told_at_once_and_what_can_be_read_is_kept():
    found = heard(Asked(outside_diameter="10", threads="27", seat_angle="74", unit="in", angle_unit="deg"))
    assert set(found.faults) == {"outside_diameter", "seat_angle"}
    assert found.measured.outside_diameter is None
    assert found.measured.pitch.middle == pytest.approx(INCH / 27)


def test_a_bare_figure_takes_the_unit_that_is_given_and_a_written_one_wins():
    bare, written = (heard(Asked(outside_diameter=text, unit="mm")).measured for text in ("9.9", "0.4 in"))
    assert bare.outside_diameter.middle == pytest.approx(9.9 * MM)
    assert written.outside_diameter.middle == pytest.approx(0.4 * INCH)


# Where the figures come from


def test_the_sum_of_each_figure_and_its_source_are_on_the_sheet():
    """ASME B1.20.1 prints L2 = .2639 in and a taper of 1 in 16 for 1/8-27."""
    asked = Asked(outside_diameter="0.400 in", threads="27")
    sheet = identify_sheet(identify(heard(asked).measured), display_of_asked(asked))
    sums = [each.label for each in sheet.blocks if isinstance(each, Sum)]
    assert sums == ["diameter over 1/8-27", "1/8-27 pitch"]
    assert any("ASME B1.20.1" in each.text for each in sheet.blocks if isinstance(each, Paragraph))


def test_where_much_fits_there_are_no_sums():
    asked = Asked(taper="no")
    sheet = identify_sheet(identify(heard(asked).measured), display_of_asked(asked))
    assert not any(isinstance(each, Sum) for each in sheet.blocks)
