"""Why ends do not mate and why parts were refused, in words a builder understands."""

from __future__ import annotations

import pytest
from invented_parts import (
    FEMALE,
    MALE,
    PIPE_PORT,
    STOCK,
    Stock,
    compression,
    flare,
    hose,
    metric,
    names,
    panel,
    part,
    pipe,
    plastic,
    reasons,
    shoulder,
    tube,
    tube_flare,
)

from firmpedal.fit.explain import why_not
from firmpedal.fit.joint import EndRef, LineEnd, MismatchKind, Port
from firmpedal.fit.refusals import MOST_REFUSALS
from firmpedal.fit.search import fit_port
from firmpedal.model.part import Form, Interface

Kind = MismatchKind


def told(one, other, stock=STOCK):
    return why_not(EndRef("port one", 0, one), EndRef("line other to", 0, other), stock)


def flare_45(size="-4", gender=FEMALE):
    return Interface(Form.FLARE_45, size, gender)


@pytest.mark.parametrize(
    ("one", "other", "kind", "words"),
    [
        (flare("-4"), flare_45(), Kind.FLARE_ANGLE, "never a 45-degree flare on a 37-degree cone"),
        (
            flare("-4"),
            Interface(Form.TUBE_FLARE_45, "-4", MALE),
            Kind.FLARE_ANGLE,
            "-4 tube with a 45-degree flare",
        ),
        (pipe(gender=FEMALE), flare_45(), Kind.FLARE_ANGLE, "never a 45-degree flare"),
        (metric(gender=FEMALE), pipe(), Kind.METRIC_AND_PIPE, "then they wedge, split the port or leak"),
        (pipe(gender=FEMALE), metric(), Kind.METRIC_AND_PIPE, "a parallel and a taper thread"),
        (flare("-4"), tube_flare("6 mm"), Kind.METRIC_TUBE, "made for 1/4 in tube, 6.35 mm"),
        (flare("-3"), tube_flare("5 mm"), Kind.METRIC_TUBE, "made for 3/16 in tube, 4.76 mm"),
        (pipe(gender=FEMALE), tube_flare("6 mm"), Kind.METRIC_TUBE, "and do not hold 6 mm"),
        (
            compression("1/4 in"),
            compression("6 mm", MALE),
            Kind.METRIC_TUBE,
            "6 mm tube and a 1/4 in nut and sleeve",
        ),
        (flare("-4"), flare("-3", FEMALE), Kind.DASH_SIZE, "without a reducer"),
        (flare("-3"), tube_flare("-4"), Kind.DASH_SIZE, "without a reducer"),
        (panel("-4"), panel("-3", FEMALE), Kind.DASH_SIZE, "without a reducer"),
        (
            pipe("1/4-18", FEMALE),
            pipe(),
            Kind.THREAD_SIZE,
            "1/4-18 taper pipe thread, female against 1/8-27",
        ),
        (
            metric("M12x1.5", FEMALE),
            metric(),
            Kind.THREAD_SIZE,
            "M12x1.5 metric parallel thread, female against M10x1",
        ),
        (flare("-4", FEMALE), flare("-4", FEMALE), Kind.BOTH_FEMALE, "a union or nipple is missing"),
        (tube_flare("-4"), flare("-4", FEMALE), Kind.BOTH_FEMALE, "a union or nipple is missing"),
        (pipe(gender=FEMALE), pipe(gender=FEMALE), Kind.BOTH_FEMALE, "a union or nipple is missing"),
        (flare("-4"), flare("-4"), Kind.BOTH_MALE, "something female is missing"),
        (pipe(), pipe(), Kind.BOTH_MALE, "something female is missing"),
        (pipe(gender=FEMALE), flare("-4", FEMALE), Kind.DIFFERENT_FORM, "missing between them: STRAIGHT-4"),
        (
            shoulder("-4", FEMALE),
            flare("-4", FEMALE),
            Kind.DIFFERENT_FORM,
            "-4 nut shoulder, female against -4 37-degree flare, female",
        ),
        (
            Interface(Form.BOSS, "-4", FEMALE),
            Interface(Form.FLARELESS, "-4", MALE),
            Kind.NO_PARTS,
            "nothing in the catalogue joins -4 straight-thread boss, female to -4 flareless, male",
        ),
    ],
)
def test_two_ends_are_told_apart_by_what_a_builder_confuses(one, other, kind, words):
    """The millimetres are those of 1/4 and 3/16 in: an inch is 25.4 mm by definition."""
    mismatch = told(one, other)
    assert mismatch.kind is kind
    assert words in mismatch.words


def test_what_is_confused_does_not_depend_on_which_end_is_named_first():
    ends = [
        flare("-4"),
        flare("-3", FEMALE),
        flare_45(),
        tube_flare("-4"),
        tube_flare("6 mm"),
        pipe(),
        metric(),
        metric(gender=FEMALE),
        compression("6 mm", MALE),
    ]
    for one in ends:
        for other in ends:
            if one != other.complement:
                assert told(one, other).kind is told(other, one).kind, (one, other)


def test_what_would_join_two_ends_is_named_bodies_first():
    assert told(pipe(gender=FEMALE), pipe(gender=FEMALE)).needed == ("NIPPLE-1",)
    assert told(tube_flare("-4"), tube_flare("-4")).needed[0] == "UNION-4"
    assert told(flare("-3", FEMALE), flare("-4", FEMALE)).needed == ("REDUCER-43",)


def test_a_flared_tube_without_nuts_in_the_catalogue_lacks_parts_and_is_not_called_confused():
    mismatch = told(flare("-4"), tube_flare("-4"), Stock(()))
    assert mismatch.kind is Kind.NO_PARTS


def test_a_pipe_dash_is_recognised_without_knowing_the_part():
    mismatch = why_not(EndRef("port one", 0, pipe(gender=FEMALE)), EndRef("part 0", 0, pipe("1/2-14")), STOCK)
    assert mismatch.kind is Kind.PIPE_DASH
    assert "dash -4 on an all-pipe fitting is 1/2 pipe" in mismatch.words


def test_a_port_that_no_part_suits_is_told_by_its_nearest_miss():
    port = Port("p", "p", metric("M12x1.5", FEMALE))
    joint = fit_port(port, tube(), STOCK.plus(part("ADAPTER-4", metric(), flare("-4"))))
    assert joint.mismatches[0].kind is Kind.THREAD_SIZE
    assert reasons(joint)["STRAIGHT-4"] == (
        "its 1/8-27 taper pipe thread is not for the port's M12x1.5 metric parallel thread: "
        "they may start by hand, then wedge or leak"
    )
    assert reasons(joint)["ADAPTER-4"] == (
        "its M10x1 metric parallel thread does not mate with the port's M12x1.5"
    )


def test_every_part_that_goes_on_the_port_is_taken_or_refused_with_one_reason():
    joint = fit_port(PIPE_PORT, hose(leaves=45), STOCK)
    on_port = {one.designation for one in STOCK.parts if any(end.interface == pipe() for end in one.ends)}
    told_of = [name for refusal in joint.refused for name in refusal.designations]
    assert len(told_of) == len(set(told_of))
    assert set(told_of) | set(names(joint)) == on_port


def test_refusals_say_what_is_wrong_with_the_obvious_part():
    assert reasons(fit_port(PIPE_PORT, hose(leaves=45), STOCK)) == {
        "STRAIGHT-4": "same joints, but straight while the line leaves at 45 degrees",
        "STRAIGHT-4-S": "same joints, but straight while the line leaves at 45 degrees",
        "SQUARE-4": "same joints, but 90 degrees while the line leaves at 45 degrees",
        "SQUARE-4-S": "same joints, but 90 degrees while the line leaves at 45 degrees",
        "HALF-4-S": "heavier: steel",
        "STREET-1": "would need 1 leak path and 1 part more, with STRAIGHT-4",
        "STREET-1-S": "would need 1 leak path and 1 part more, with STRAIGHT-4",
        "NIPPLE-1": "would need 2 leak paths and 2 parts more, with COUPLING-1 and HALF-4",
        "NIPPLE-1-S": "would need 2 leak paths and 2 parts more, with COUPLING-1 and HALF-4",
        **{
            name + metal: "its -3 37-degree flare does not mate with the line's -4"
            for name in ("STRAIGHT-3", "HALF-3", "SQUARE-3")
            for metal in ("", "-S")
        },
        "PLUG-1": "has one end only: it closes what it is screwed to",
        "PLUG-1-S": "has one end only: it closes what it is screwed to",
        "OLDFORM-4": "low-pressure or obsolete form: never in a brake line",
        "SQUEEZE-4": "nothing joins its 1/4 in compression, female to the line",
    }


def test_refusals_come_nearest_first_and_are_kept_short():
    joint = fit_port(PIPE_PORT, hose(leaves=45), STOCK)
    assert [refusal.designations[0] for refusal in joint.refused] == [
        "STRAIGHT-4",
        "SQUARE-4",
        "HALF-4-S",
        "STREET-1",
        "NIPPLE-1",
        "STRAIGHT-3",
        "PLUG-1",
        "OLDFORM-4",
        "SQUEEZE-4",
    ]
    many = Stock((*STOCK.parts, *(part(f"ODD-{n}", pipe(), flare(f"-{n}")) for n in range(10, 40))))
    assert len(fit_port(PIPE_PORT, hose(), many).refused) == MOST_REFUSALS


def test_the_reason_follows_what_was_asked_for():
    turned = reasons(fit_port(PIPE_PORT, hose(turn=45), STOCK))
    assert turned["STRAIGHT-4"] == "straight, and 45 degrees is declared"
    plain = reasons(fit_port(PIPE_PORT, hose(), STOCK))
    assert plain["SQUARE-4"] == "same joints, but 90 degrees: nothing asks for a turn"
    tie = reasons(fit_port(PIPE_PORT, hose(leaves=22.5), STOCK))
    assert tie["HALF-4"] == "45 degrees: as near to where the line leaves, but the straighter is taken"
    asked = reasons(fit_port(PIPE_PORT, hose(material="steel"), STOCK))
    assert asked["STRAIGHT-4"] == "aluminium: steel is asked for"
    like = reasons(fit_port(PIPE_PORT, tube(), STOCK))
    assert like["STRAIGHT-4-S"] == "steel: another metal is taken only where nothing else joins"
    direct = reasons(fit_port(Port("p", "p", flare("-4")), tube(), STOCK))
    assert direct["NUT-4-S"] == "steel: the nut and sleeve are of the tube's metal, aluminium"


def test_a_part_of_the_same_family_with_another_thread_is_refused_by_its_thread():
    stock = STOCK.plus(part("STRAIGHT-44", pipe("1/4-18"), flare("-4")))
    assert reasons(fit_port(PIPE_PORT, hose(), stock))["STRAIGHT-44"] == (
        "its 1/4-18 taper pipe thread does not mate with the port's 1/8-27"
    )


def test_the_wrong_flare_is_refused_by_its_angle():
    line = LineEnd("l", "to", Interface(Form.TUBE_FLARE_45, "-4", MALE), "aluminium")
    joint = fit_port(PIPE_PORT, line, STOCK)
    assert reasons(joint)["STRAIGHT-4"] == "its 37-degree flare never goes with the line's 45-degree flare"


def test_a_part_that_is_the_same_by_another_number_is_called_as_good():
    twin = part("TWIN-4", pipe(), flare("-4"))
    joint = fit_port(PIPE_PORT, hose(), Stock((part("FIRST-4", pipe(), flare("-4")), twin)))
    assert names(joint) == ["FIRST-4"]
    assert reasons(joint) == {"TWIN-4": "as good in every way that counts"}


def test_plastic_refuses_other_tube_sizes_by_size():
    stock = STOCK.plus(part("SQUEEZE-6", pipe(), compression("6 mm"), metal="brass"))
    assert reasons(fit_port(PIPE_PORT, plastic(), stock))["SQUEEZE-6"] == (
        "its 6 mm compression does not mate with the line's 1/4 in"
    )
