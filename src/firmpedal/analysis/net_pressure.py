"""From a foot to the pressure in the line and back, less what return spring and seals of the cylinder take.

The one place for it: stroke, stopping and whatever else asks what really gets to the caliper. The
strength of the lines goes by the pressure without this (`pressure.py`), which is never too low.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from firmpedal.analysis.linkage import pins_of, ratio_at
from firmpedal.formulas.pedal import net_line_pressure, pad_force, spring_force
from firmpedal.quantity import Mark, Step, Value, apply, exactly
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from firmpedal.model.kinds import MasterCylinder
    from firmpedal.model.surroundings import Pedal


SPRING_AT_REST = (
    "The return spring of {name} is given at rest alone, and taken to push back no more as it is pressed: "
    "the pressure is this at most, and the foot this at least."
)


class Push(NamedTuple):
    """One cylinder with the pedal on it; `ratio` is the pedal's at rest."""

    cylinder: MasterCylinder
    pedal: Pedal | None
    ratio: Value

    @property
    def plain(self) -> bool:
        """Whether pressure is foot times ratio over area and no more, as far as the file says."""
        cylinder = self.cylinder
        held = cylinder.return_spring.at_rest.known or cylinder.seal_friction.known
        return not held and pins_of(self.pedal) is None

    @property
    def goes_by_stroke(self) -> bool:
        """Whether its force is another with the pedal further down, by a spring or a lever that turns."""
        spring = self.cylinder.return_spring
        stiffens = spring.at_rest.known and not spring.at_rest_alone
        return stiffens or pins_of(self.pedal) is not None

    def pressure(self, force: Value, stroke: Value, words: str) -> Value:
        """Pressure that a force on the pad makes where the stroke has come to; `words` name the foot.

        An unknown stroke may be anywhere in the cylinder.
        """
        return apply(
            net_line_pressure,
            f"pressure at the {words} foot, less spring and friction",
            place=f"{self.cylinder.place}.net pressure.{words}",
            foot_force=force,
            **self._lever_and_losses(stroke, words),
        )

    def foot(self, pressure: Value, stroke: Value, words: str) -> Value:
        """Force on the pad that makes a pressure where the stroke has come to; `words` say what for."""
        return apply(
            pad_force,
            f"foot on each pedal for {words}",
            place=f"{self.cylinder.place}.foot.{words}",
            pressure=pressure,
            **self._lever_and_losses(stroke, words),
        )

    def _lever_and_losses(self, stroke: Value, words: str) -> dict[str, Value]:
        friction = self.cylinder.seal_friction
        went = self._within(stroke)
        return {
            "lever_ratio": ratio_at(self.pedal, stroke if stroke.known else went, self.ratio),
            "bore": self.cylinder.bore,
            "spring_force": self._spring(went, words),
            "seal_friction": friction if friction.known else _left_out("seal friction"),
        }

    def _spring(self, went: Value, words: str) -> Value:
        spring = self.cylinder.return_spring
        if not spring.at_rest.known:
            return _left_out("return spring")
        if spring.at_rest_alone:
            return self._as_at_rest(words)
        return apply(
            spring_force,
            f"force of the return spring, {words}",
            place=f"{self.cylinder.place}.spring.{words}",
            at_rest=spring.at_rest,
            pressed=spring.pressed,
            stroke=went,
            full_stroke=self.cylinder.stroke,
        )

    def _as_at_rest(self, words: str) -> Value:
        """The spring where nobody knows what it does as it is pressed: it pushes back no less."""
        cylinder, rest = self.cylinder, self.cylinder.return_spring.at_rest
        step = Step("S = S_0", (("S_0", rest),), caution=SPRING_AT_REST.format(name=cylinder.name))
        label, place = f"least force of the return spring, {words}", f"{cylinder.place}.spring.{words}"
        return Value(label, rest.dimension, rest.span, max(Mark.DERIVED, rest.mark), place, step=step)

    def _within(self, stroke: Value) -> Value:
        """No further than the cylinder goes; where nobody knows how far, from rest to its end."""
        whole = self.cylinder.stroke
        if whole.span is None:
            return whole
        low, high = stroke.span or (0.0, whole.low)
        label = stroke.label if stroke.known else "stroke, anywhere in the cylinder"
        mark = max(stroke.mark, whole.mark)
        return Value(label, stroke.dimension, (min(low, whole.low), min(high, whole.low)), mark, whole.place)


def _left_out(words: str) -> Value:
    return exactly(f"{words}, left out", Dimension.FORCE, 0.0, Mark.DERIVED)
