"""The first page: what this is, the answer, the main figures, and what goes before any of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.analysis.pressure import FEET
from firmpedal.finding import Level, Verdict
from firmpedal.model.display import count_of
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Answer
from firmpedal.report.sheet import (
    Bullets,
    Contents,
    Facts,
    Fields,
    Figure,
    Figures,
    Group,
    Heading,
    Paragraph,
    Sheet,
    Tone,
)
from firmpedal.report.to_measure import to_measure
from firmpedal.report.worked import worked

if TYPE_CHECKING:
    from firmpedal.model.aircraft import Datum
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block

INSPECTED = (
    "The work is inspected and signed by somebody who is licensed or entitled to. This program shows "
    "arithmetic and published practice. It approves nothing."
)
CAUTIONS = (
    "The kit maker's and the component makers' instructions and your local authority's rules come first.",
    INSPECTED,
    "Never loosen or tighten a joint under pressure. Chock the wheels before you open a line.",
    "Brake fluid burns, and it harms eyes and paint. Goggles on, rags out, no flame.",
)
BEFORE = "Before you begin"
VERDICTS = {
    Verdict.SOUND: "Nothing was found that could hurt somebody, and nothing that was asked is unknown.",
    Verdict.NOT_SOUND: "At least one thing could hurt somebody. Put the warnings right first.",
    Verdict.NOT_SHOWN: "Figures are missing to say that it is sound. In what is known, nothing was found "
    "that could hurt somebody.",
}
CERTIFICATED = {
    Answer.YES: "This aircraft has a type certificate: the maker's approved data decide, not these papers.",
    Answer.UNKNOWN: "The file does not say whether this aircraft has a type certificate. If it has one, the "
    "maker's approved data decide, not these papers.",
}


@worked
def cover_sheet(evaluation: Evaluation) -> Sheet:
    """The cover: the answer in one line before anything else, except whose data decide."""
    header = evaluation.aircraft.aircraft
    blocks: list[Block] = [*certificate(evaluation)]
    blocks += [Paragraph(verdict_line(evaluation), Tone.VERDICT), Paragraph(why_line(evaluation))]
    blocks += [_pressures(evaluation), _counts(evaluation), Facts(_identity(evaluation))]
    blocks.append(Group((Heading(BEFORE), Bullets(CAUTIONS))))
    blocks += [Contents(), Fields(("inspected by, licence", "date"))]
    return Sheet(header.name, tuple(blocks), subtitle=f"Brake lines, {option_words(evaluation)}")


def certificate(evaluation: Evaluation) -> tuple[Paragraph, ...]:
    """Whose data decide, where the aircraft has a type certificate or may have one."""
    words = CERTIFICATED.get(evaluation.aircraft.aircraft.type_certificate)
    return (Paragraph(words, Tone.CAUTION),) if words else ()


def option_words(evaluation: Evaluation) -> str:
    """Which of the file's options this is."""
    option = evaluation.reading.option
    return f"option {option}" if option else "as written"


def verdict_line(evaluation: Evaluation) -> str:
    """The verdict in one line with its count."""
    warnings = sum(finding.level is Level.WARNING for finding in evaluation.findings)
    things = len(to_measure(evaluation))
    words = {
        Verdict.SOUND: "SOUND",
        Verdict.NOT_SOUND: f"NOT SOUND: {count_of(warnings, 'warning')}",
        Verdict.NOT_SHOWN: f"NOT SHOWN: {count_of(things, 'thing')} to measure",
    }
    return words[evaluation.verdict]


def why_line(evaluation: Evaluation) -> str:
    """One sentence on why the verdict is what it is."""
    things = len(to_measure(evaluation))
    if evaluation.verdict is not Verdict.NOT_SOUND:
        return VERDICTS[evaluation.verdict]
    first = next(finding for finding in evaluation.findings if finding.level is Level.WARNING)
    also = f" Besides, {count_of(things, 'thing')} must be measured." if things else ""
    return f"The first warning: {first.message}.{also}"


def _pressures(evaluation: Evaluation) -> Figures:
    """The greatest pressure that the cylinders make at each foot force, and that feet make together."""
    show, results = evaluation.display.value, evaluation.results
    items = []
    for number, foot in enumerate(FEET):
        made = dict.fromkeys(show(each.greatest[number]) for each in results.cylinders)
        both = dict.fromkeys(show(each.pressures[number]) for each in results.pressures if each.adding)
        text = " or ".join(made) if made else "unknown"
        more = f"both seats together: {' or '.join(both)}" if both else ""
        items.append(Figure(f"{foot} foot, {show(evaluation.results.forces[number])}", text, more))
    return Figures(tuple(items))


def _counts(evaluation: Evaluation) -> Figures:
    kinds = {kind: sum(line.kind is kind for line in evaluation.laid) for kind in LineKind}
    words = ", ".join(f"{count} {kind.value}" for kind, count in kinds.items() if count)
    joints = evaluation.assembly.joints
    leaks = sum(joint.leak_paths for joint in joints)
    return Figures(
        (
            Figure("lines", str(len(evaluation.aircraft.lines)), words),
            Figure("joints", str(len(joints)), f"{count_of(len(evaluation.violations), 'end')} left open"),
            Figure("leak paths", str(leaks), "places where fluid is held"),
        )
    )


def _identity(evaluation: Evaluation) -> tuple[tuple[str, str], ...]:
    header = evaluation.aircraft.aircraft
    rows = [
        ("revision", ", ".join(word for word in (header.revision, header.date) if word) or "not given"),
        ("datum", datum_words(evaluation.aircraft.datum)),
        (
            "fluid",
            evaluation.aircraft.fluid.name if evaluation.aircraft.fluid else "unknown",
        ),
    ]
    return tuple(rows)


def datum_words(datum: Datum) -> str:
    """Where the builder's zeros are."""
    axes = (("aft from", datum.x_zero), ("right from", datum.y_zero), ("up from", datum.z_zero))
    words = [f"{axis} {zero}" for axis, zero in axes if zero]
    return "; ".join(words) if words else "not described in the file"
