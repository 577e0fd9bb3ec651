"""What a text was before, step by step, and the way back and forth."""

from __future__ import annotations

from dataclasses import dataclass, replace

LONGEST = 200  # steps; the oldest are forgotten


@dataclass(frozen=True)
class Step:
    """A text, what was done to get to it, and when [s]."""

    text: str
    said: str
    at: float


@dataclass(frozen=True)
class History:
    """Texts in order: `past` oldest first, `future` nearest first."""

    present: Step
    past: tuple[Step, ...] = ()
    future: tuple[Step, ...] = ()

    def then(self, step: Step, joined_within: float = 0.0) -> History:
        """Go on to another text; what was undone before is given up.

        Args:
            step: The new text.
            joined_within: How soon after the last step, if that said the same, the two are one [s].
        """
        last = self.present
        if joined_within and self.past and step.said == last.said and step.at - last.at <= joined_within:
            return History(step, self.past)
        return History(step, (*self.past, last)[-LONGEST:])

    def back(self) -> History:
        """One step back; the same where there is none."""
        if not self.past:
            return self
        return replace(self, present=self.past[-1], past=self.past[:-1], future=(self.present, *self.future))

    def forth(self) -> History:
        """One step forth again; the same where there is none."""
        if not self.future:
            return self
        return replace(self, present=self.future[0], past=(*self.past, self.present), future=self.future[1:])
