"""How the builder's file spells a thread that was found by measuring."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from firmpedal.decide.thread_ends import Quantity
from firmpedal.model.part import Form, Interface
from firmpedal.project.thread_hints import TOLD
from firmpedal.project.thread_spelling import spelled_thread

if TYPE_CHECKING:
    from firmpedal.decide.identify import Question
    from firmpedal.model.part import Gender

# The straight threads of inch sizes are the same with a cone and with an O-ring: what seals is looked at.
ALSO = {Form.FLARE_37: (Form.FLARE_37, Form.BOSS)}


class Spelled(NamedTuple):
    """A thread as the file has it, and what such an end looks like, where another one has the same thread."""

    words: str
    looks: str = ""


def spelled_as(question: Question, gender: Gender) -> tuple[Spelled, ...]:
    """Write the one thread that fits; nothing before it is decided, or where no fitting for it is known."""
    if not question.decided:
        return ()
    found = question.remaining[0]
    candidate = found.candidate
    if candidate.form is None or not candidate.size:
        return ()
    coned = any(fit.quantity is Quantity.SEAT for fit in found.fits)
    forms = (candidate.form,) if coned else ALSO.get(candidate.form, (candidate.form,))
    threads = [Interface(form, candidate.size, gender) for form in forms]
    several = len(threads) > 1
    return tuple(
        Spelled(spelled_thread(each), TOLD[each.form, gender] if several else "") for each in threads
    )
