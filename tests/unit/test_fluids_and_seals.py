"""Which seals go with which fluid, and what mixes with what."""

from __future__ import annotations

import pytest

from firmpedal.catalog import catalogue, fluid
from firmpedal.finding import Level
from firmpedal.formulas.references import every_entry
from firmpedal.model.component import Seals
from firmpedal.pipeline import Evaluation, evaluate_text
from firmpedal.quantity import Mark
from texts import edited, small

MINERAL = ("MIL-PRF-5606", "MIL-PRF-83282", "MIL-PRF-87257")
GLYCOL = ("DOT 3", "DOT 4")
# MIL-PRF-5606H 6.4.2: qualified with nitrile. 49 CFR 571.116 S4: tested with SBR, EPDM, CR and NR, not with
# nitrile. Articles on brake fluids: glycol swells nitrile. The rest is common practice, no source.
GOES_WITH = {
    **{(name, seals): seals is not Seals.ETHYLENE_PROPYLENE for name in MINERAL for seals in Seals},
    **{(name, seals): seals is Seals.ETHYLENE_PROPYLENE for name in GLYCOL for seals in Seals},
    **{("DOT 5", seals): True for seals in Seals},
}


def evaluated(*edits: tuple[str, str]) -> Evaluation:
    return evaluate_text(edited(small("quillfen"), *edits), "quillfen")


def filled(now: str, before: str = "", seals: str = "") -> Evaluation:
    edits = [("fluid: MIL-PRF-5606", f"fluid: {now}" + (f"\nfluid before: {before}" if before else ""))]
    if seals:
        edits.append(("    pad gap: 0.020\n", f"    pad gap: 0.020\n    seals: {seals}\n"))
        edits.append(("    stroke: 3/4\n", f"    stroke: 3/4\n    seals: {seals}\n"))
    return evaluated(*edits)


def levels(evaluation: Evaluation, rule: str) -> list[Level]:
    return [finding.level for finding in evaluation.findings if finding.rule == rule]


@pytest.mark.parametrize(("pair", "good"), GOES_WITH.items(), ids=str)
def test_every_fluid_is_rated_with_every_seal(pair, good):
    name, seals = pair
    rating = fluid(name).rating(seals)
    assert rating.good is good
    assert rating.source in every_entry()
    assert (rating.mark is Mark.MEMORY) == (rating.source == "common-practice")


def test_no_fluid_and_no_seal_was_left_out():
    assert {(each.name, seals) for each in catalogue().fluids for seals in Seals} == set(GOES_WITH)


@pytest.mark.parametrize(("pair", "good"), GOES_WITH.items(), ids=str)
def test_seals_that_are_attacked_are_warned_of_at_every_component(pair, good):
    name, seals = pair
    assert levels(filled(name, seals=seals.value), "fluid-against-seals") == (
        [] if good else [Level.WARNING] * 2
    )


@pytest.mark.parametrize("now", [*MINERAL, *GLYCOL, "DOT 5"])
@pytest.mark.parametrize("before", [*MINERAL, *GLYCOL, "DOT 5"])
def test_families_never_mix(now, before):
    kin = any({now, before} <= set(family) for family in (MINERAL, GLYCOL, ("DOT 5",)))
    assert (Level.CAUTION in levels(filled(now, before), "fluids-mixed")) == (not kin)


def test_a_fluid_that_flashes_sooner_is_noted_and_not_the_other_way_round():
    assert levels(filled("MIL-PRF-83282", "MIL-PRF-5606"), "fluids-mixed") == [Level.NOTE]
    assert levels(filled("MIL-PRF-5606", "MIL-PRF-83282"), "fluids-mixed") == []
    assert levels(filled("DOT 4", "DOT 3"), "fluids-mixed") == []


@pytest.mark.parametrize(
    ("now", "before", "asks"),
    [
        ("MIL-PRF-5606", "", False),  # what aircraft brake parts are made for
        ("MIL-PRF-83282", "MIL-PRF-5606", False),
        ("MIL-PRF-5606", "DOT 4", True),
        ("DOT 4", "", True),
        ("DOT 5", "", True),
        ("unknown", "", True),
    ],
)
def test_seals_that_nobody_declared_are_asked_for_once_and_only_where_it_matters(now, before, asks):
    unclear = [item for item in filled(now, before).not_shown if item.rule == "fluid-against-seals"]
    assert len(unclear) == asks
    seals = ["components.cylinder.seals", "components.caliper.seals"]
    for item in unclear:
        assert [each.place for each in item.missing] == (["fluid"] if now == "unknown" else seals)
