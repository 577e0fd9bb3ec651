"""`firmpedal explain`: the sum behind any figure, the reasons for a joint, the words of a rule."""

from __future__ import annotations

import difflib
from typing import TYPE_CHECKING

from rich.text import Text

from firmpedal.checks.rules import RULES
from firmpedal.cli.terminal import (
    UNUSABLE,
    console,
    evaluated,
    print_block,
    print_finding,
    print_sum,
    print_wrapped,
)
from firmpedal.report.explaining import figures_at, limit_words, sums_behind
from firmpedal.report.joint_numbers import joint_numbers, number_asked, numbered
from firmpedal.report.joints import joint_sheet, joints_named, meetings_at
from firmpedal.report.sheet import Paragraph
from firmpedal.report.story import every_value

if TYPE_CHECKING:
    from pathlib import Path

    from rich.console import Console

    from firmpedal.fit.joint import Joint
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value


def run(file: Path, place: str, option: str | None) -> int:
    """Explain one place of a file; the result is the exit code."""
    evaluation = evaluated(file, option)
    if evaluation is None:
        return UNUSABLE
    out = console()
    place = place.strip()
    number = number_asked(place)
    if number is not None:
        return _explain_number(out, evaluation, number)
    named = joints_named(evaluation, place)
    if _explain_rule(out, evaluation, place) or _explain_joints(out, evaluation, named):
        return 0
    # where lines meet there may be figures besides
    met = _explain_joints(out, evaluation, meetings_at(evaluation, place))
    values = every_value(evaluation)
    spellings = (place, place.replace(" ", ".", 1), place.replace(" ", "."))
    places = next((found for spelling in spellings if (found := _matching(values, spelling))), [])
    if not places:
        if met:
            return 0
        names = [line.name for line in evaluation.aircraft.lines]
        names += [joint.name for joint in evaluation.assembly.joints] + [rule.name for rule in RULES]
        close = difflib.get_close_matches(place, [*names, *values], 3, 0.5)
        hint = f"Did you mean: {', '.join(close)}?" if close else "Try the name of a line, such as left_leg."
        console(error=True).print(Text(f"Nothing is called `{place}`. {hint}"))
        return UNUSABLE
    if len(places) == 1:
        _explain_place(out, evaluation, places[0], values[places[0]])
    else:
        _list_places(out, evaluation, places, values)
    return 0


def _explain_rule(out: Console, evaluation: Evaluation, name: str) -> bool:
    rule = next((rule for rule in RULES if rule.name == name), None)
    if rule is None:
        return False
    out.print(Text(rule.name, style="bold"))
    for paragraph in rule.words.split("\n\n"):
        print_block(out, Paragraph(" ".join(paragraph.split())))
    for finding in evaluation.findings:
        if finding.rule == name:
            out.print()
            print_finding(out, evaluation, finding)
    return True


def _explain_number(out: Console, evaluation: Evaluation, number: int) -> int:
    """The joint of a number, as printed on the circuit, the cards and the check sheet."""
    names = {number: name for name, number in joint_numbers(evaluation).items()}
    if number in names:
        _explain_joints(out, evaluation, joints_named(evaluation, names[number]))
        return 0
    there = (
        f"They go from 1 to {len(names)}, as on the circuit and the cards." if names else "It has no joint."
    )
    print_wrapped(console(error=True), "", f"The file has no joint {number}. {there}")
    return UNUSABLE


def _explain_joints(out: Console, evaluation: Evaluation, joints: tuple[Joint, ...]) -> bool:
    for joint in joints:
        sheet = joint_sheet(joint)
        out.print(Text(numbered(joint.name, evaluation), style="bold"))
        for block in sheet.blocks:
            print_block(out, block)
        out.print()
    return bool(joints)


def _matching(values: dict[str, list[Value]], wanted: str) -> list[str]:
    """Find a place by its whole path, else by an end or a piece of it."""
    if wanted in values:
        inner = [place for place in values if place.startswith(f"{wanted}.")]
        return [wanted] if not inner else [wanted, *inner]
    parts = wanted.split(".")
    return [place for place in values if place and _holds(place.split("."), parts)]


def _holds(path: list[str], parts: list[str]) -> bool:
    return any(path[n : n + len(parts)] == parts for n in range(len(path)))


def _explain_place(out: Console, evaluation: Evaluation, place: str, values: list[Value]) -> None:
    for value in values:
        for depth, each in sums_behind(value, evaluation.display):
            print_sum(out, each, "   " * depth)
    for finding in evaluation.findings:
        limit = limit_words(finding, evaluation.display)
        if finding.measured is not None and finding.measured.place == place and limit:
            out.print(Text(f"{limit}  [{finding.rule}]"))
    span = evaluation.span_of(place)
    out.print(Text(f"{span.file}:{span.line}:{span.column}", style="dim"))


def _list_places(
    out: Console, evaluation: Evaluation, places: list[str], values: dict[str, list[Value]]
) -> None:
    """Print one line for each figure, with the name under which its sum can be asked for."""
    for each in figures_at({place: values[place] for place in places}, evaluation.display):
        row = Text(f"{each.figure:>14}  {each.place}  ({each.label})")
        out.print(row, no_wrap=True, overflow="ellipsis")
    example = next((place for place in places if values[place][0].step), places[0])
    out.print(Text(f"\nAsk for a sum by its name: firmpedal explain {evaluation.reading.file} '{example}'"))
