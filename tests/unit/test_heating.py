"""Heat of whole aircraft: bands from the file, narrowed by a trial, against what stands them."""

import pytest

from firmpedal.analysis.heating import heating
from firmpedal.analysis.heating.bands import courses, following
from firmpedal.pipeline import evaluate_text
from firmpedal.quantity import Answer, Mark
from firmpedal.report.heat import TITLE, heat_sheet
from firmpedal.report.heat_plot import heat_plot
from firmpedal.report.packet import packet_sheets
from firmpedal.report.sheet import Paragraph
from firmpedal.report.story import every_value
from firmpedal.units import from_unit, to_unit

AIRCRAFT = """
firmpedal: 1
aircraft: {name: Quillfen, gear: nosewheel, brakes: toe, landing weight: 1320 lb, type certificate: no}
units: {length: in, angle: deg, force: lbf, pressure: psi, temperature: degF}
fluid: MIL-PRF-5606
foot: {normal: 10, hard: 20, panic: 60}
on the ground: {tyre radius: 6.5, landing speed: 39 kt, taxi drag: 5, hot day: 100}
components:
  cylinder:
    kind: master cylinder
    bore: 5/8
    stroke: 3/4
    pedal: pedal
    ports:
      outlet: {thread: 1/8 NPT female, faces: down, seat: [10, 0, 4]}
  left_caliper:
    kind: caliper
    pistons: {bore: 1-1/2, count per side: 1}
    seals: nitrile
    effective radius: 2.3
    mass: 1.5 lb
    disc: {mass: 0.80 kg, radius: 3}
    ports:
      inlet: {thread: 1/8 NPT female, faces: forward, seat: [16, -4, -6]}
      other: {thread: 1/8 NPT female, faces: forward, seat: [16, -3, -6]}
  right_caliper:
    like: left_caliper
pedals:
  pedal: {brake: {pad: 5, arm: 5}}
lines:
  run: {from: cylinder.outlet, to: left_caliper.inlet, made of: plastic nylon 1/4 x .040}
  across: {from: left_caliper.other, to: right_caliper.inlet, made of: plastic nylon 1/4 x .040}
"""
TRIAL = "heat trial: {air: 70, port: %s}\n    disc:"


def heat_of(text):
    return evaluate_text(text).results.heating


def with_trial(port):
    return AIRCRAFT.replace("disc:", TRIAL % port)


def band(value, unit="degF"):
    return tuple(to_unit(bound, unit) for bound in value.span)


def test_one_stop_by_hand():
    """44,441 ft-lbf are 60,254 J; 85 to 97 percent of it into 0.80 kg of 460 to 500 J/kg K, from 100 F."""
    low, high = (60254 * share / (0.80 * heat) for share, heat in ((0.85, 500.0), (0.97, 460.0)))
    start = from_unit(100, "degF")
    brake = heat_of(AIRCRAFT).brakes[0]
    assert brake.disc_alone.low == pytest.approx(start + low, abs=0.1)
    assert brake.disc_alone.high == pytest.approx(start + high, abs=0.1)
    one_stop = brake.peaks[0]
    assert brake.disc_alone.low - 5 < one_stop.disc.low <= brake.disc_alone.low + 1
    assert brake.disc_alone.high - 5 < one_stop.disc.high <= brake.disc_alone.high + 1


def test_more_stops_are_hotter_and_a_longer_pause_is_cooler():
    usual = heat_of(AIRCRAFT).brakes[0].peaks[1].caliper
    more = (
        heat_of(AIRCRAFT.replace("taxi drag: 5", "taxi drag: 5, stops in a row: 6"))
        .brakes[0]
        .peaks[1]
        .caliper
    )
    pause = heat_of(AIRCRAFT.replace("taxi drag: 5", "taxi drag: 5, time between stops: 30 min"))
    assert more.high > usual.high
    assert pause.brakes[0].peaks[1].caliper.high < usual.high


def test_from_next_to_no_speed_nothing_gets_warm():
    """At a crawl there is no energy to speak of: the brake stays as warm as the air."""
    one_stop = heat_of(AIRCRAFT.replace("landing speed: 39 kt", "landing speed: 0.001 kt")).brakes[0].peaks[0]
    assert band(one_stop.caliper) == pytest.approx((100, 100))


def test_a_band_is_an_estimate_and_says_from_what():
    value = heat_of(AIRCRAFT).brakes[0].peaks[1].caliper
    assert value.mark is Mark.ESTIMATE
    assert len(value.step.inputs) > 20


def test_a_trial_narrows_every_band():
    wide, narrow = (heat_of(text).brakes[0] for text in (AIRCRAFT, with_trial(150)))
    assert narrow.agrees is True
    for one, other in zip(wide.peaks, narrow.peaks, strict=True):
        assert one.caliper.low <= other.caliper.low < other.caliper.high <= one.caliper.high
    row = narrow.peaks[1].caliper
    assert row.high - row.low < 0.4 * (wide.peaks[1].caliper.high - wide.peaks[1].caliper.low)
    # The hot day is 30 F warmer than the air of the trial; a label shows steps of 9 F, and each end of the
    # 18 F has a seventh of them as room for what the search did not find.
    low, high = band(row)
    assert 150 + 30 - 13 < low < high < 150 + 30 + 13


def test_an_impossible_trial_is_said_and_not_believed():
    wide, odd = (heat_of(text).brakes[0] for text in (AIRCRAFT, with_trial(900)))
    assert odd.agrees is False
    assert odd.peaks[1].caliper.span == wide.peaks[1].caliper.span


def limit(brake, kind):
    return next(each for each in brake.limits if each.kind == kind)


def words_of(evaluation):
    blocks = heat_sheet(evaluation).blocks
    return " ".join(block.text for block in blocks if isinstance(block, Paragraph))


def test_hot_plastic_is_refused_with_its_number():
    """200 lbf of a foot make 652 psi; plastic at a port of 330 degF has less left, however cool its end."""
    text = with_trial(330).replace("hard: 20, panic: 60", "hard: 200, panic: 200")
    evaluation = evaluate_text(text)
    found = limit(evaluation.results.heating.brakes[0], "plastic")
    assert found.found.at_least(found.allowed) is Answer.NO
    assert "plastic is refused. It is good for 0" in words_of(evaluation)
    assert "pressure at the hard foot: 652 psi" in words_of(evaluation)


def test_cool_and_lightly_used_plastic_is_not_condemned():
    """A slow landing: the port stays under 100 degC, and 60 lbf of a panic foot make only 196 psi."""
    text = with_trial(90).replace("landing speed: 39 kt", "landing speed: 20 kt")
    evaluation = evaluate_text(text)
    found = limit(evaluation.results.heating.brakes[0], "plastic")
    assert found.found.at_least(found.allowed) is Answer.YES
    assert "the plastic holds" in words_of(evaluation)


def test_hot_plastic_is_held_against_the_panic_foot_as_cold_plastic_is():
    """684 to 812 psi are left of it: enough for 200 lbf, 652 psi, and not for 300, 978 psi."""
    cool = with_trial(90).replace("landing speed: 39 kt", "landing speed: 20 kt")
    text = cool.replace("hard: 20, panic: 60", "hard: 200, panic: 300")
    evaluation = evaluate_text(text)
    found = limit(evaluation.results.heating.brakes[0], "plastic")
    assert band(found.allowed, "psi") == pytest.approx((977.8, 977.8), abs=0.1)
    assert found.found.at_least(found.allowed) is Answer.NO
    assert "plastic is refused" in words_of(evaluation)
    assert "pressure at the panic foot: 978 psi" in words_of(evaluation)


def test_a_panic_foot_that_nobody_knows_leaves_hot_plastic_open():
    cool = with_trial(90).replace("landing speed: 39 kt", "landing speed: 20 kt")
    found = limit(heat_of(cool.replace("panic: 60", "panic: unknown")).brakes[0], "plastic")
    assert found.found.at_least(found.allowed) is Answer.UNKNOWN
    assert any(missing.place == "foot.panic" for missing in found.allowed.missing)


def test_glycol_is_held_against_its_wet_boiling_point():
    text = AIRCRAFT.replace("fluid: MIL-PRF-5606", "fluid: DOT 4")
    found = limit(heat_of(text).brakes[0], "fluid")
    assert to_unit(found.allowed.middle, "degC") == pytest.approx(155)
    assert "Fresh DOT 4 boils at 446 degF" in words_of(evaluate_text(text))


def test_what_is_unknown_is_asked_for_and_nothing_is_shown():
    text = AIRCRAFT.replace("mass: 1.5 lb", "mass: unknown")
    evaluation = evaluate_text(text)
    brake = evaluation.results.heating.brakes[0]
    assert not brake.peaks[0].disc.known
    assert any("weigh it" in missing.what for missing in brake.peaks[0].disc.missing)
    assert heat_plot(brake, evaluation.results.heating.air, evaluation.display) is None
    assert "cannot be told yet" in words_of(evaluation)


def test_a_file_without_disc_and_caliper_mass_is_left_in_peace():
    text = AIRCRAFT.replace("    mass: 1.5 lb\n", "").replace("    disc: {mass: 0.80 kg, radius: 3}\n", "")
    evaluation = evaluate_text(text)
    assert not evaluation.results.heating.asked
    assert not {item.rule for item in evaluation.not_shown} & {"fluid-too-hot", "seals-too-hot"}
    assert TITLE not in {sheet.title for sheet in packet_sheets(evaluation)}
    assert TITLE in {sheet.title for sheet in packet_sheets(evaluate_text(AIRCRAFT))}


def test_every_figure_can_be_asked_for_by_its_place():
    places = every_value(evaluate_text(AIRCRAFT))
    assert places["components.left_caliper.heat.stops in a row.fluid"][0].step is not None
    assert places["components.left_caliper.heat.disc alone"][0].step is not None


def test_the_picture_has_the_band_that_the_table_has():
    brake = heat_of(AIRCRAFT).brakes[0]
    times, ends = courses(brake, "stops in a row")
    low, high = ends[1]
    assert (low <= high).all()
    assert list(times) == sorted(times)
    peak = brake.peaks[1].caliper
    assert high.max() <= peak.high - from_unit(100, "degF") + 0.5


def test_the_picture_of_a_trial_shows_what_the_table_tells():
    """The label bounds the peak by the clock of the picture, too, which looks more often: 2 K at most."""
    brake = heat_of(with_trial(150)).brakes[0]
    _, ends = courses(brake, "stops in a row")
    rise = brake.peaks[1].caliper.high - from_unit(100, "degF")
    assert ends[1][1].max() == pytest.approx(rise, abs=2)


def test_what_was_worked_out_once_is_remembered():
    evaluation = evaluate_text(AIRCRAFT)
    results = evaluation.results
    pressures = {each.line: each for each in results.pressures}
    again = heating(evaluation.aircraft, results.stopping, pressures)
    assert again == evaluation.results.heating


LIMITS = {"seals": 250, "fluid": 275}  # degF: of nitrile's catalogue page, and the fluid's service limit


def test_a_port_hotter_than_the_limit_is_too_hot_whatever_is_reckoned():
    """No figures give 900 F after three stops; the seals had it all the same, and 30 F more at 100 F."""
    odd = heat_of(with_trial(900)).brakes[0]
    assert odd.agrees is False
    assert band(odd.measured) == pytest.approx((930, 930))
    seals, fluid = (limit(odd, kind) for kind in ("seals", "fluid"))
    assert to_unit(seals.found.low, "degF") == pytest.approx(930)
    assert to_unit(seals.allowed.low, "degF") == pytest.approx(LIMITS["seals"])
    assert seals.answer() is fluid.answer() is Answer.NO
    evaluation = evaluate_text(with_trial(900))
    assert {"seals-too-hot", "fluid-too-hot", "heat-trial-disagrees"} <= {
        each.rule for each in evaluation.findings
    }
    words = words_of(evaluation)
    assert "No set of figures in the ranges reckoned with agrees" in words
    assert "900 degF at the port in air of 70 degF, which is 930 degF on a day of 100 degF" in words


def test_a_trial_that_agrees_with_nothing_promises_nothing():
    """75 F after hard stops from 70 F: too cool to be true, so that nothing holds by it."""
    cool = heat_of(with_trial(71).replace("air: 70", "air: 100")).brakes[0]
    assert cool.agrees is False
    assert {each.answer() for each in cool.limits} <= {Answer.UNKNOWN, Answer.NO}
    assert limit(cool, "seals").answer() is Answer.UNKNOWN
    (asked,) = cool.to_try
    assert "does not go with the ranges" in asked.what


def test_labels_that_were_read_are_not_asked_for_again():
    for port in (150, 900):
        asked = [each.what for each in heat_of(with_trial(port)).brakes[0].to_try]
        assert not any("temperature labels" in what for what in asked)


def test_what_only_the_port_warms_is_not_warmer_than_the_port():
    """Fluid and line take their heat from the caliper alone: their greatest rise is a share of its own.

    The port was 830 F above the air, and what is above the air stays on a day of 100 F.
    """
    odd = heat_of(with_trial(900)).brakes[0]
    fluid, line = following(odd.trial, odd.pistons)
    assert 0.5 < fluid[0] < fluid[1] <= 1
    assert 0 < line[0] < line[1] <= 1
    found = limit(odd, "fluid").found
    assert to_unit(found.low, "degF") == pytest.approx(100 + fluid[0] * 830, abs=0.1)


def test_what_was_measured_counts_before_anything_is_reckoned():
    text = with_trial(400).replace("mass: 1.5 lb", "mass: unknown")
    brake = heat_of(text).brakes[0]
    assert not brake.peaks[0].disc.known
    assert limit(brake, "seals").answer() is Answer.NO


def test_the_headline_names_the_hottest_case():
    text = AIRCRAFT.replace("taxi drag: 5", "taxi drag: 20, taxi time: 60 min")
    evaluation = evaluate_text(text)
    hot = evaluation.results.heating.brakes[0].peaks[2]
    assert hot.situation == "long taxi"
    lead = next(block.text for block in heat_sheet(evaluation).blocks if isinstance(block, Paragraph))
    assert lead.startswith("After a long taxi on a day of 100 degF")
    assert evaluation.display.value(hot.caliper) in lead
    assert "after 3 stops in a row" in lead
    body = limit(evaluation.results.heating.brakes[0], "seals").found
    assert body.high == hot.caliper.high


def test_a_disc_that_one_stop_makes_hotter_than_the_flash_point_gets_hotter():
    """One stop alone gives 211 to 263 F by hand, over 180 F; a cool taxi takes nothing from it."""
    text = AIRCRAFT.replace("taxi drag: 5", "taxi drag: 1")
    assert "The disc gets hotter than the flash point" in words_of(evaluate_text(text))


def test_energy_is_shared_as_the_brakes_brake():
    """Left pistons of 1-1/2 in, right of 1 in, else alike: the left takes 2.25 / 3.25 of it."""
    text = AIRCRAFT.replace(
        "    like: left_caliper", "    like: left_caliper\n    pistons: {bore: 1, count per side: 1}"
    )
    left, right = heat_of(text).brakes
    whole = 2 * 60254
    assert left.figures.energy.middle == pytest.approx(whole * 2.25 / 3.25, rel=1e-3)
    assert right.figures.energy.middle == pytest.approx(whole / 3.25, rel=1e-3)
    assert left.figures.energy.exact
    assert "left_caliper takes 69 % of the braking" in words_of(evaluate_text(text))


def test_what_both_brakes_have_alike_does_not_widen_their_shares():
    """The friction of the linings is a range, the same for both."""
    assert heat_of(AIRCRAFT).brakes[0].sharing.span == (2.0, 2.0)
