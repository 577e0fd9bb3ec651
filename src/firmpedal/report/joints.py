"""A joint in words: what goes together there, what was looked at and not taken, and why."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.report.sheet import Bullets, Heading, Paragraph, Sheet

if TYPE_CHECKING:
    from firmpedal.fit.joint import Joint
    from firmpedal.pipeline import Evaluation
    from firmpedal.report.sheet import Block


def joints_named(evaluation: Evaluation, name: str) -> tuple[Joint, ...]:
    """The joints of a name, or those in which a designation is used or was refused."""
    joints = evaluation.assembly.joints
    wanted = name.upper()
    return (
        tuple(joint for joint in joints if joint.name == name)
        or tuple(joint for joint in joints if wanted in {part.designation.upper() for part in joint.parts})
        or tuple(
            joint
            for joint in joints
            if wanted in {other.upper() for refusal in joint.refused for other in refusal.designations}
        )
    )


def meetings_at(evaluation: Evaluation, place: str) -> tuple[Joint, ...]:
    """The joint where the line's end at a place such as `lines.run.to` meets another line's end."""
    section, _, rest = place.partition(".")
    line, _, end = rest.rpartition(".")
    joint = evaluation.assembly.joint_of(line, end) if section == "lines" else None
    return (joint,) if joint is not None and joint.place.startswith("lines.") else ()


def joint_sheet(joint: Joint) -> Sheet:
    """What was chosen at a joint and what was refused, each with its reason."""
    chosen = ", ".join(f"{part.designation} ({part.name})" for part in joint.parts)
    blocks: list[Block] = [Paragraph(chosen or "Nothing goes between.")]
    blocks += [Paragraph(mismatch.words) for mismatch in joint.mismatches]
    if joint.leak_paths:
        count = "one place" if joint.leak_paths == 1 else f"{joint.leak_paths} places"
        blocks.append(Paragraph(f"Fluid is held at {count}."))
    if joint.refused:
        refused = tuple(f"{', '.join(item.designations)}: {item.reason}" for item in joint.refused)
        blocks += [Heading("Not taken, and why"), Bullets(refused)]
    return Sheet(joint.name, tuple(blocks))
