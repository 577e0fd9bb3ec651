"""What somebody has to measure or look up, in print: each thing once, with a line to write on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.finding import Verdict
from firmpedal.project.names import label_of
from firmpedal.report.findings import where_of
from firmpedal.report.sheet import BOX, Paragraph, Sheet, Table
from firmpedal.report.to_measure import to_measure
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.offers import Offer
    from firmpedal.report.to_measure import ToMeasure

UNTIL_KNOWN = (
    "Until these are known, nobody can say whether the brakes are sound. Write the figures into the file."
)
BESIDES = (
    "It is NOT SOUND by what was found already: settle that first. What the other rules say shows once these "
    "are known. Write the figures into the file."
)
SAME = "The same figure goes to {others}, which the file makes alike."
MIRRORED = (
    "{others} gets the same seen in a mirror: right -14 here is right 14 there. Where that is not so, make "
    "it its own first, under Describe."
)
SAME_THREAD = "The same answer goes to {others}, which the file makes alike: look there too."


def until_known(evaluation: Evaluation) -> str:
    """What hangs on these: with a WARNING that stands, no longer the verdict."""
    return BESIDES if evaluation.verdict is Verdict.NOT_SOUND else UNTIL_KNOWN


@worked
def measure_sheet(evaluation: Evaluation) -> Sheet | None:
    """The sheet, as the page counts its rows; None where nothing is to be measured."""
    things = to_measure(evaluation)
    if not things:
        return None
    rows = tuple((BOX, _words(evaluation, each), "") for each in things)
    table = Table(("", "what", "measured"), rows, widths=(0.06, 0.64, 0.3), pen=frozenset({2}))
    return Sheet("To measure", (Paragraph(until_known(evaluation)), table))


def _words(evaluation: Evaluation, one: ToMeasure) -> str:
    own = (one.at,) if one.at else tuple(place for place in one.places if place not in one.others)
    where = "; ".join(where_of(evaluation, place) for place in own)
    lines = (one.what, where, same_words(one), *map(offer_words, one.offers), one.why)
    return "\n".join(words for words in lines if words)


def line_of(one: ToMeasure) -> str:
    """One thing in one line of a list, with what else it is for and what the file offers."""
    return ". ".join(
        words
        for words in (one.what, same_words(one).removesuffix("."), *map(offer_words, one.offers))
        if words
    )


def offer_words(offer: Offer) -> str:
    """What a figure that stands elsewhere is worth here."""
    if offer.doubt:
        return f"{offer.thing} has {offer.words} in the file, {offer.doubt}: measure it"
    return f"{offer.thing} has {offer.words} in the file: {offer.asks}"


def same_words(one: ToMeasure) -> str:
    """What else gets the same figure; empty where it is for one thing alone."""
    words = SAME_THREAD if one.of_thread else MIRRORED if one.turns else SAME
    return words.format(others=", ".join(map(label_of, one.others))) if one.others else ""
