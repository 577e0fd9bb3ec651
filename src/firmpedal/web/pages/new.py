"""A new aircraft from pictures of its layout: a plain form, which works before anything else has loaded."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from firmpedal.project.layouts import CHOICES
from firmpedal.web import addresses
from firmpedal.web.elements import box, link, raw, said
from firmpedal.web.pictures import PICTURES

if TYPE_CHECKING:
    from collections.abc import Mapping

QUESTIONS = {
    "gear": "Where is the third wheel?",
    "leg": "What are the main legs?",
    "brakes": "What presses the brakes?",
    "seats": "Which seats have brakes, and where do they stand?",
    "valve": "Is there a parking valve?",
    "length": "What do you measure in?",
}

LEAD = (
    "Choose what is most like yours; all of it can be changed later. Then you get a form that lists what to "
    "measure. Nothing is measured yet, and nothing is guessed."
)

NAMED = "It stands on every sheet, and the file in your folder is called so. No other file is touched."


def show(given: Mapping[str, str]) -> None:
    """Lay out the form, with what was chosen before and why it was refused: the name, once all is chosen."""
    with box(classes="fp-frame"):
        with box("header", "fp-top"):
            link("All aircraft", addresses.START, "fp-back")
            with box(classes="fp-title"):
                said("h1", "A new aircraft")
        with (
            box(classes="fp-main", id="main"),
            box("form", "fp-new", method="post", action=addresses.BEGIN_LAYOUT),
        ):
            said("p", LEAD, "fp-step-lead")
            words = given.get("refused", "")
            chosen = all(given.get(key, "") in choices for key, choices in CHOICES.items())
            if words and not chosen:
                said("p", words, "fp-refused", role="alert")
            for key, choices in CHOICES.items():
                raw(
                    _question(key, choices, given.get(key, "in" if key == "length" else "")),
                    classes="fp-question",
                )
            raw(_name(given.get("name", ""), words if chosen else ""), classes="fp-question")
            with box(classes="fp-actions"):
                said("button", "Begin this aircraft", "fp-button fp-button-main", type="submit")
                said("button", "Only print the measuring form", "fp-button", type="submit",
                     formaction=addresses.FORM_OF_LAYOUT, formnovalidate="")  # fmt: skip


def _question(key: str, choices: Mapping[str, str], chosen: str) -> str:
    rows = "".join(_choice(key, word, meaning, checked=word == chosen) for word, meaning in choices.items())
    return (
        f"<fieldset><legend>{escape(QUESTIONS[key])}</legend><div class='fp-choices'>{rows}</div></fieldset>"
    )


def _choice(key: str, word: str, meaning: str, *, checked: bool) -> str:
    mark = " checked" if checked else ""
    return (
        f'<label class="fp-choice"><input type="radio" name="{key}" value="{escape(word)}" required{mark}>'
        f"{PICTURES.get((key, word), '')}<span><b>{escape(word)}</b><br>{escape(meaning)}</span></label>"
    )


def _name(given: str, refused: str) -> str:
    """The box for its name; where that was refused, why, and the page opens there."""
    wrong = f'<p class="fp-refused" id="refused" role="alert">{escape(refused)}</p>' if refused else ""
    at_it = ' autofocus aria-invalid="true" aria-describedby="refused"' if refused else ""
    return (
        '<label class="fp-entry"><span>What do you call it?</span><input class="fp-pen" name="name" required '
        f'autocomplete="off" placeholder="Blue Heron" value="{escape(given)}"{at_it}>'
        f'<span class="fp-small">{NAMED}</span></label>{wrong}'
    )
