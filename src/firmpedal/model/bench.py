"""The builder's bench: bender, flaring tool and tube in hand, as far as they set what can be made."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from firmpedal.model.fields import (
    Angle,
    Declared,
    Members,
    Named,
    OptionalLength,
    Reads,
    SomeSize,
    YesNo,
)
from firmpedal.model.shapes import Body
from firmpedal.model.stock import Hose, Tube
from firmpedal.quantity import Answer, Value


class MarkAt(StrEnum):
    """Which place of the bend the bender's own mark stands for, and so where the tube is marked."""

    START = "start of bend"
    MIDDLE = "middle of bend"
    END = "end of bend"


class Springback(Declared):
    """What one trial bend came to: the angle asked of the bender, and the angle got."""

    asked: Angle
    got: Angle


class BenderPart(Named):
    """A part of bender or bench that the tube must not hit, in the bender's own axes.

    The bend begins at [0, 0, 0]; the tube comes along the first axis and bends towards the second.
    """

    where: Annotated[Body, Reads("body")]
    turns: YesNo = Answer.NO


class Bender(Declared):
    """The hand bender."""

    mark: Annotated[MarkAt | None, Reads("choice", choices=MarkAt, optional=True)] = None
    grip: OptionalLength
    springback: Annotated[tuple[Springback, ...], Members] = ()
    parts: Annotated[tuple[BenderPart, ...], Members] = ()


class FlaringTool(Declared):
    """The flaring tool: the straight it grips, and how far the tube stands out of its block."""

    grip: OptionalLength
    stick_out: OptionalLength


class TubeInHand(Named):
    """Tube that lies there or can be had: pieces with their lengths, a coil being one long piece."""

    made_of: Annotated[Tube | Hose, Reads("stock")]
    pieces: Annotated[tuple[Value, ...], Reads("lengths")]


class Bench(Declared):
    """The builder's tools and tube, as far as they set what can be made."""

    bend_radius: SomeSize
    straight_between_bends: OptionalLength
    end_straight: OptionalLength
    flare_allowance: OptionalLength
    longest_tube: SomeSize
    cutter_loss: OptionalLength
    wrench_length: SomeSize
    bender: Bender
    flaring_tool: FlaringTool
    tube: Annotated[tuple[TubeInHand, ...], Members] = ()
