"""The findings that a builder has accepted, in plain words; they are taken back where they are shown."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from firmpedal.checks.rules import asked_by
from firmpedal.project.names import label_of
from firmpedal.web import addresses

if TYPE_CHECKING:
    from firmpedal.model.aircraft import Acceptance
    from firmpedal.web.form.fields import Around

SECTION = "accepted"
HOW = (
    "A finding is accepted where it is shown, with your reason, and taken back there. Nothing needs to be "
    "written here."
)
GONE = "a rule that there is not any more"


def accepted_html(accepted: tuple[Acceptance, ...], around: Around) -> str:
    """What is accepted, each with what the rule asks, where, and the reason; then the way to the findings."""
    rows = "".join(
        f"<li><p><strong>{escape(asked_by(each.rule) or GONE)}</strong></p>"
        f"<p>Accepted at {escape(label_of(each.at))}: {escape(each.reason)}</p></li>"
        for each in accepted
    )
    to = escape(f"{addresses.step(around.file, 'sound', around.option)}#found")
    return (
        f'<div class="fp-form-head"><h2>Accepted findings</h2><p class="fp-small">{HOW}</p></div>'
        f'<div class="fp-actions"><a class="fp-button" href="{to}">See them at Is it sound?</a></div>'
        f"<ul>{rows}</ul>"
    )
