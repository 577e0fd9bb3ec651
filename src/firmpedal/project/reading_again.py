"""What was written into a text is read again before it is kept: a slip is told in the reader's own words."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from firmpedal.project.edit import EditError
from firmpedal.project.read import read_text

if TYPE_CHECKING:
    from firmpedal.project.read import Reading


def read_again(before: str, after: str, option: str | None) -> Reading:
    """Read a changed text.

    Args:
        before: The text as it was.
        after: The text as it would be.
        option: The option that is looked at; none for the aircraft as written.

    Raises:
        EditError: It has a problem that it did not have before, in whatever line; the message is the
            reader's.
    """
    reading = read_text(after, "text", option)
    if not reading.problems:
        return reading
    old = Counter(each.message for each in read_text(before, "text", option).problems)
    for problem in reading.problems:
        if not old[problem.message]:
            raise EditError(problem.message, problem.suggestion)
        old[problem.message] -= 1
    return reading
