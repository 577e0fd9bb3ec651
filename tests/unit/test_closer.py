"""What a builder can do where a range reaches its limit: measure, ask the maker, choose another."""

from __future__ import annotations

from firmpedal.checks.closer import closer
from firmpedal.pipeline import evaluate_text
from firmpedal.project.measured import measured
from firmpedal.quantity import Mark, Value, total
from firmpedal.report.to_measure import to_measure
from firmpedal.units import Dimension
from texts import small

TEXT = small("withyford")


def asked(text):
    return {each.at or each.places[0]: each for each in to_measure(evaluate_text(text))}


def figure(label, place, dimension=Dimension.LENGTH):
    return Value(label, dimension, (1.0, 2.0), Mark.READ, place)


def test_a_figure_of_the_file_is_asked_for_where_it_stands():
    (one,) = closer(figure("pad gap", "components.brake.pad gap"))
    assert (one.place, one.what) == (
        "components.brake.pad gap",
        "pad gap more closely: its range reaches the limit",
    )


def test_what_nobody_can_write_down_says_what_can_be_done_at_its_line():
    tube = figure("outside diameter", "catalogue")
    (one,) = closer(total("size of run", [tube, tube], "lines.run.size"))
    assert one.place == "lines.run.made of"
    assert "outside diameter of run" in one.what
    assert "a caliper to 0.001 in" in one.what
    assert "Choose another" in one.what
    (one,) = closer(total("strength", [figure("strength", "catalogue", Dimension.PRESSURE)], "lines.run.x"))
    assert "Ask its maker" in one.what


def test_how_a_hose_swells_is_asked_for_in_two_boxes_and_settles_it():
    place = "lines.leg.swells"
    assert asked(TEXT)[f"{place}.volume"].unit == "cu in"
    text = TEXT
    for at, unit in ((f"{place}.volume", "0.0001"), (f"{place}.under", "1000")):
        text, _ = measured(text, at, unit)
    assert not any(at.startswith(place) for at in asked(text))


def test_a_hot_metal_tube_asks_how_hot_it_gets_and_takes_the_answer():
    text = small("quillfen").replace(
        "    to: caliper.inlet\n", "    to: caliper.inlet\n    temperature: unknown\n"
    )
    one = asked(text)["lines.run.temperature"]
    assert one.unit == "degF"
    hot, _ = measured(text, "lines.run.temperature", "400")
    assert "heat strips" in next(each.what for each in to_measure(evaluate_text(hot)))
    cool, _ = measured(text, "lines.run.temperature", "150")
    assert "lines.run.temperature" not in asked(cool)
