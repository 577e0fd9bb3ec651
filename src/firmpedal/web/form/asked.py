"""Cards that ask: what a new thing is, what something is to be called, whether it may be taken out."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape
from typing import TYPE_CHECKING

from firmpedal.project.names import other_side
from firmpedal.project.new_things import NAME, SORTS, called_by, questions
from firmpedal.project.sorts import word_for
from firmpedal.web.form.does import does
from firmpedal.web.options import BEGIN

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.project.mentions import Mention
    from firmpedal.project.new_things import Question, Sort
    from firmpedal.project.tree import Branch

ANOTHER = "Another way to build it"
COMPARE = (
    "An option keeps what you have described and compares it with what you would change, or with the old "
    "lines."
)
STILL_NAMED = "It is still named in:"
FIRST = "Change that first, or take it out too."
SUCH = {
    "thing to keep clear of": "left_tyre",
    "zone": "left_brake_heat",
    "panel": "cabin_floor",
    "named point": "left_axle_end",
    "state": "flaps",
    "moving thing": "left_flap",
    "attitude": "parked",
    "port": "outlet",
    "side": "above",
    "tube": "quarter_inch",
    "part of the bender": "handle",
    "pack": "clamps",
}
ALONE = "It belongs to option {option} alone; for every option, go to the aircraft as written first."
AWAY = (
    "{other} goes, with every figure it has as a mirror image, and there is none on that side any more. If "
    "it is there but stands otherwise, leave it, and make it its own instead. Undo brings it back."
)
STAYS = "What is written there stays as it is."


@dataclass(frozen=True)
class Asked:
    """What the form is being asked besides: what to add, what to rename, or whether to take something out.

    `named` are the places that name what is to be taken out, each with words for it; `images` the mirror
    images that go with it.
    """

    adding: Sort | None = None
    removing: str = ""
    renaming: str = ""
    refused: str = ""
    answers: tuple[tuple[str, str], ...] = ()
    named: tuple[tuple[str, str], ...] = ()
    images: tuple[str, ...] = ()
    unmirroring: str = ""

    @property
    def at(self) -> str:
        """Where its card stands: in the thing that it is about, or where something is added."""
        adding = word_for(self.adding) if self.adding is not None else ""
        return self.removing or self.renaming or self.unmirroring or adding


def asked_html(
    asked: Asked, tree: Branch, option: str | None = None, said: Callable[[str], str] = str
) -> str:
    """The card of what is being asked, in the option that is looked at; empty where nothing is.

    Args:
        asked: What it is.
        tree: The file.
        option: The option; none for the file as written.
        said: Says our own words for the brakes that the aircraft has.
    """
    if asked.removing:
        return _removing(asked)
    if asked.renaming:
        return _renaming(asked)
    if asked.unmirroring:
        return _unmirroring(asked)
    return "" if asked.adding is None else _adding(asked, asked.adding, tree, (option, said))


def add_html(card: str, begin: str, said: Callable[[str], str] = str) -> str:
    """What can be added to the file; or the questions about what is being added; and the way to an option.

    Args:
        card: The questions; empty where nothing is being added.
        begin: The address of the page on which an option is begun.
        said: Says our own words for the brakes that the aircraft has.
    """
    buttons = "".join(does("add", sort.name, said(sort.name)) for sort in SORTS)
    return (
        f'<section aria-label="Add"><h2>Add something</h2>{card}'
        f'<div class="fp-actions">{buttons}</div></section>'
        f'<section aria-label="{ANOTHER}"><h2>{ANOTHER}</h2><p class="fp-small">{COMPARE}</p>'
        f'<div class="fp-actions"><a class="fp-button" href="{escape(begin)}">{BEGIN}</a></div></section>'
    )


def _card(what: str, label: str, inner: str, refused: str, buttons: str) -> str:
    wrong = f'<p class="fp-refused" role="alert">{escape(refused)}</p>' if refused else ""
    return (
        f'<section class="fp-card fp-asked" data-asked="{escape(what)}" aria-label="{escape(label)}">'
        f'{inner}{wrong}<div class="fp-actions">{buttons}{does("leave", "", "Leave it")}</div></section>'
    )


def _removing(asked: Asked) -> str:
    place, name = asked.removing, asked.removing.rpartition(".")[2]
    called = f"number {name}" if name.isdecimal() else name
    also = f" {', '.join(asked.images)} goes with it." if asked.images else ""
    words = f"It goes from the file with all that stands under it.{also} Undo brings it back."
    named = ""
    if asked.named:
        rows = "".join(f"<li>{does('pick', at, said)}</li>" for at, said in asked.named)
        after = FIRST if asked.refused else STAYS
        named = f'<p>{STILL_NAMED}</p><ul class="fp-asked-list">{rows}</ul><p>{after}</p>'
    main = "" if asked.refused else does("removed", place, "Yes, take it out", main=True)
    inner = f"<h3>Take {escape(called)} out?</h3><p>{escape(words)}</p>{named}"
    return _card(f"remove {place}", "Take out", inner, asked.refused, main)


def _renaming(asked: Asked) -> str:
    place, name = asked.renaming, asked.renaming.rpartition(".")[2]
    now = dict(asked.answers).get(NAME, name)
    inner = (
        f"<h3>Another name for {escape(name)}</h3>"
        "<p>Whatever names it, in every option, is changed too, and its mirror image goes along.</p>"
        f"{_input(NAME, 'its new name', now)}"
    )
    return _card(
        f"rename {place}", "Rename", inner, asked.refused, does("renamed", place, "Rename it", main=True)
    )


def _unmirroring(asked: Asked) -> str:
    """Whether the mirror image of a thing is to go, and what goes with it."""
    place, other = asked.unmirroring, other_side(asked.unmirroring.rpartition(".")[2])
    inner = f"<h3>Take {escape(other)} away?</h3><p>{escape(AWAY.format(other=other))}</p>"
    main = "" if asked.refused else does("unmirrored", place, "Yes, take it away", main=True)
    return _card(f"unmirror {place}", "Take the mirror image away", inner, asked.refused, main)


def _adding(asked: Asked, sort: Sort, tree: Branch, shown: tuple[str | None, Callable[[str], str]]) -> str:
    (option, said), called = shown, shown[1](sort.name)
    given = dict(asked.answers)
    names = called_by(tree, sort)
    name = given.get(NAME, "")
    if names is None:
        such = f"its name, such as {SUCH.get(sort.name, f'left_{sort.name.split()[-1]}')}"
        first = _input(NAME, such, name)
    else:
        first = _choice(NAME, "which", names, name) if names else ""
    rows = "".join(_question(one, given.get(one.key, ""), said) for one in questions(tree, sort))
    whose = f" {ALONE.format(option=option)}" if option is not None and sort in SORTS else ""
    starts = f"What can be measured starts as unknown.{whose}"
    inner = f"<h3>A new {escape(called)}</h3><p>{escape(starts)}</p>{first}{rows}"
    word = word_for(sort)
    return _card(
        f"add {word}", f"Add a {called}", inner, asked.refused, does("added", word, "Add it", main=True)
    )


def _question(one: Question, now: str, said: Callable[[str], str]) -> str:
    words = f"{one.key}: {said((one.meaning or one.hint).replace('`', ''))}"
    if one.choices:
        return _choice(one.key, words, one.choices, now)
    return _input(one.key, words, now)


def _input(key: str, words: str, now: str) -> str:
    return (
        f'<label class="fp-field-cell"><span>{escape(words)}</span><input type="text"'
        f' data-answer="{escape(key)}" autocomplete="off" spellcheck="false" value="{escape(now)}"></label>'
    )


def _choice(key: str, words: str, choices: tuple[str, ...], now: str) -> str:
    options = "".join(
        f"<option{' selected' if word == now else ''}>{escape(word)}</option>" for word in ("", *choices)
    )
    return (
        f'<label class="fp-field-cell"><span>{escape(words)}</span>'
        f'<select data-answer="{escape(key)}">{options}</select></label>'
    )


def in_words_of(mention: Mention) -> str:
    """Where a name stands: the thing, and the key in it."""
    _, _, rest = mention.place.partition(".")
    name, _, key = rest.partition(".")
    where = f"{name}: {key.replace('.', ' ')}" if key else name
    return f"{where} (option {mention.option})" if mention.option is not None else where
