"""The form of a thing as HTML: what can be chosen, its fields, and what can be added or taken out."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape
from typing import TYPE_CHECKING

from firmpedal.project.new_things import SORTS, questions
from firmpedal.web import addresses
from firmpedal.web.form.fields import Around, field_html

if TYPE_CHECKING:
    from firmpedal.project.field_places import Thing
    from firmpedal.project.fields import Field, Group
    from firmpedal.project.new_things import Question, Sort
    from firmpedal.project.tree import Branch

CHOOSE = "Choose something in the picture, or here:"
FOR_ALL = "It stands in the aircraft as written: what you change here holds for every option."
COPY = "It is a copy of {name}, such as its mirror image, and changes with it."
OWN = "It takes over what it does not say itself from {name}; what you write here holds for this one alone."
MORE = "More that can be said"
SECTION_NAMES = {"": "the file"}
FILE_PLACE = "-"  # in the list, of what stands in the file by itself


@dataclass(frozen=True)
class Asked:
    """What the form is being asked besides: what to add, or whether to take something out."""

    adding: Sort | None = None
    removing: str = ""
    refused: str = ""
    answers: tuple[tuple[str, str], ...] = ()


def chooser_html(things: dict[str, tuple[Thing, ...]], chosen: str, lacking: int) -> str:
    """Everything in the file to choose from, grouped in the order of the job, and how much is lacking."""
    groups = "".join(
        f'<optgroup label="{escape(SECTION_NAMES.get(section, section))}">'
        + "".join(
            f'<option value="{escape(thing.place or FILE_PLACE)}"'
            f"{' selected' if (thing.place or FILE_PLACE) == chosen else ''}>"
            f"{escape(thing.name)}{' (copy)' if thing.copy_of else ''}</option>"
            for thing in inner
        )
        + "</optgroup>"
        for section, inner in things.items()
    )
    return (
        f'<label class="fp-field-cell"><span>{CHOOSE}</span><select data-pick data-was="{escape(chosen)}">'
        f'<option value="">nothing chosen</option>{groups}</select></label>{_next(lacking)}'
    )


def _next(lacking: int) -> str:
    """How many are still to be measured, and the way to the next of them."""
    if not lacking:
        return ""
    words = f"{lacking} field{'' if lacking == 1 else 's'} still unknown."
    button = '<button type="button" class="fp-button" data-do="next">Go to the next one</button>'
    return f'<div class="fp-field-row"><p class="fp-form-lacking">{words}</p>{button}</div>'


def form_html(group: Group, thing: Thing, around: Around, *, written: bool, for_all: bool) -> str:
    """The form of a thing, its unsaid fields folded away.

    Args:
        group: Its fields.
        thing: What it is.
        around: The page.
        written: Whether it is written by itself, and not made by a copy alone.
        for_all: Whether it holds for every option, and one is looked at.
    """
    head = (
        f'<div class="fp-form-head"><h2>{escape(thing.name)}</h2>'
        f'<p class="fp-small">{escape(group.about)}</p></div>'
    )
    ways = _ways(thing, around, written=written)
    if thing.copy_of and not written:
        name = thing.copy_of.partition(".")[2]
        return head + (
            f'<p class="fp-field-note">{escape(COPY.format(name=name))}</p>'
            f'<div class="fp-actions"><button type="button" class="fp-button" data-do="pick"'
            f' data-of="{escape(thing.copy_of)}">Go to {escape(name)}</button>{ways}</div>{_facts(group)}'
        )
    notes = [FOR_ALL] if for_all else []
    notes += [OWN.format(name=thing.copy_of.partition(".")[2])] if thing.copy_of else []
    said = "".join(f'<p class="fp-field-note">{escape(words)}</p>' for words in notes)
    return f'{head}{said}<div class="fp-actions">{ways}</div>{_group(group, around)}'


def _ways(thing: Thing, around: Around, *, written: bool) -> str:
    found = ""
    if thing.section in addresses.IN_SPACE:
        to = escape(addresses.space(around.file, around.option, thing.place))
        found += f'<a class="fp-button" href="{to}">See it in space</a>'
    if written and thing.place != thing.section:
        found += (
            f'<button type="button" class="fp-button" data-do="remove" data-of="{escape(thing.place)}">'
            f"Take {escape(thing.name)} out</button>"
        )
    return found


def _group(group: Group, around: Around) -> str:
    shown = [one for one in group.fields if one.written or one.needed or one.many or one.problems]
    folded = [one for one in group.fields if one not in shown]
    own = "".join(field_html(one, around) for one in shown)
    inner = "".join(
        f'<section class="fp-form-group" data-place="{escape(each.place)}"><h3>{escape(each.title)}</h3>'
        f"{_group(each, around)}</section>"
        for each in group.groups
    )
    more = "".join(field_html(one, around) for one in folded)
    wrong = any(place == one.place for one in folded for place, _, _ in around.refused)
    fold = f"<details{' open' if wrong else ''}><summary>{MORE} ({len(folded)})</summary>{more}</details>"
    return own + inner + (fold if folded else "")


def _facts(group: Group) -> str:
    """What is written of something that is changed elsewhere."""
    rows = "".join(
        f"<div><dt>{escape(_name(one, group))}</dt><dd>{escape(_words(one))}</dd></div>"
        for one in group.all_fields() if one.written
    )  # fmt: skip
    return f'<dl class="fp-space-figures">{rows}</dl>'


def _name(one: Field, group: Group) -> str:
    return one.place.removeprefix(f"{group.place}.").replace(".", " ")


def _words(one: Field) -> str:
    return "; ".join(", ".join(cell.words for cell in row.cells) for row in one.rows)


def asked_html(asked: Asked, tree: Branch, images: tuple[str, ...]) -> str:
    """What can be added, the form for what is being added, or the question before something is taken out."""
    wrong = f'<p class="fp-refused" role="alert">{escape(asked.refused)}</p>' if asked.refused else ""
    if asked.removing:
        name = asked.removing.partition(".")[2]
        also = f" {', '.join(images)} goes with it." if images else ""
        return (
            f'<section class="fp-card" aria-label="Take out"><h2>Take {escape(name)} out?</h2>'
            f"<p>It goes from the file with all that stands under it.{escape(also)} Undo brings it back.</p>"
            f'{wrong}<div class="fp-actions"><button type="button" class="fp-button fp-button-main"'
            f' data-do="removed" data-of="{escape(asked.removing)}">Yes, take it out</button>'
            f'<button type="button" class="fp-button" data-do="leave">Leave it</button></div></section>'
        )
    if asked.adding is not None:
        return _adding(asked, asked.adding, tree, wrong)
    buttons = "".join(
        f'<button type="button" class="fp-button" data-do="add" data-of="{escape(sort.name)}">'
        f"{escape(sort.name)}</button>"
        for sort in SORTS
    )
    return (
        f'<section aria-label="Add"><h2>Add something</h2>{wrong}'
        f'<div class="fp-actions">{buttons}</div></section>'
    )


def _adding(asked: Asked, sort: Sort, tree: Branch, wrong: str) -> str:
    given = dict(asked.answers)
    rows = "".join(_question(one, given.get(one.key, "")) for one in questions(tree, sort))
    name = escape(given.get("a name", ""))
    return (
        f'<section class="fp-card" aria-label="Add a {escape(sort.name)}"><h2>A new {escape(sort.name)}</h2>'
        "<p>What can be measured starts as unknown.</p>"
        f'<label class="fp-field-cell"><span>its name, such as left_{escape(sort.name.split()[-1])}</span>'
        f'<input type="text" data-answer="a name" autocomplete="off" value="{name}"></label>'
        f'{rows}{wrong}<div class="fp-actions"><button type="button" class="fp-button fp-button-main"'
        f' data-do="added" data-of="{escape(sort.name)}">Add it</button>'
        '<button type="button" class="fp-button" data-do="leave">Leave it</button></div></section>'
    )


def _question(one: Question, now: str) -> str:
    label = f"<span>{escape(one.key)}: {escape((one.meaning or one.hint).replace('`', ''))}</span>"
    if not one.choices:
        control = (
            f'<input type="text" data-answer="{escape(one.key)}" autocomplete="off" value="{escape(now)}">'
        )
    else:
        options = "".join(
            f"<option{' selected' if word == now else ''}>{escape(word)}</option>"
            for word in ("", *one.choices)
        )
        control = f'<select data-answer="{escape(one.key)}">{options}</select>'
    return f'<label class="fp-field-cell">{label}{control}</label>'
