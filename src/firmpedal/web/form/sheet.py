"""The form of a thing as HTML: what can be chosen, its fields, and what can be added or taken out."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from firmpedal.model.display import count_of
from firmpedal.project.names import label_of, other_side
from firmpedal.project.sorts import word_for
from firmpedal.web import addresses
from firmpedal.web.form.does import does
from firmpedal.web.form.fields import field_html

if TYPE_CHECKING:
    from collections.abc import Callable

    from firmpedal.project.field_places import Thing
    from firmpedal.project.fields import Field, Group
    from firmpedal.project.sorts import Sort
    from firmpedal.web.form.clash import Where
    from firmpedal.web.form.fields import Around

ALL_OF_IT = "Is it sound? counts all that is to be measured: also what has no field in the file yet."
CHOOSE = "Choose something in the picture, or here:"
FOR_ALL = "It stands in the aircraft as written: what you change here holds for every option."
ALONE = "Change it for this option alone"
COPY = "It is a copy of {name}, such as its mirror image, and changes with it."
OWN = "It takes over what it does not say itself from {name}; what you write here holds for this one alone."
OWN_IMAGE = "Make {name} its own"
ONCE = "It stands once. Is there one on the other side too? Then press {mirror}, and {other} is made like it."
MIRROR = "Mirror it"
NOT_SAVED = "What you typed here is not saved yet:"
MORE = "More that can be said"
SECTION_NAMES = {"": "the file"}
FILE_PLACE = "-"  # in the list, of what stands in the file by itself


def chooser_html(
    things: dict[str, tuple[Thing, ...]], chosen: str, lacking: int, said: Callable[[str], str] = str
) -> str:
    """Everything in the file to choose from, grouped in the order of the job, and how much is lacking."""
    groups = "".join(
        f'<optgroup label="{escape(said(SECTION_NAMES.get(section, section)))}">'
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
    words = f"{count_of(lacking, 'field')} of the file still open."
    button = '<button type="button" class="fp-button" data-do="next">Go to the next one</button>'
    more = f'<p class="fp-small">{ALL_OF_IT}</p>'
    return f'<div class="fp-field-row"><p class="fp-form-lacking">{words}</p>{button}</div>{more}'


def waiting_html(others: list[Where]) -> str:
    """The ways to what was typed in other things and is not saved; empty where nothing is."""
    places = dict.fromkeys(place for place, _, _ in others)
    buttons = "".join(does("pick", place, f"Go to {label_of(place)}") for place in places)
    return (
        f'<p class="fp-field-wrong">{NOT_SAVED}</p><div class="fp-actions">{buttons}</div>' if places else ""
    )


def form_html(
    group: Group,
    thing: Thing,
    around: Around,
    *,
    written: bool,
    for_all: bool,
    mirrored: bool | None = None,
    to_own: tuple[str, ...] = (),
) -> str:
    """The form of a thing, its unsaid fields folded away.

    Args:
        group: Its fields.
        thing: What it is.
        around: The page.
        written: Whether it is written by itself, and not made by a copy alone.
        for_all: Whether it holds for every option, and one is looked at.
        mirrored: Whether it stands on the mirror list; None where it cannot.
        to_own: The places of the mirror images that could be made things of their own: of it, or itself.
    """
    head = (
        f'<div class="fp-form-head"><h2>{escape(thing.name)}</h2>'
        f'<p class="fp-small">{escape(around.said(group.about))}</p></div>'
    )
    ways = _ways(thing, around, written=written, mirrored=mirrored)
    ways += "".join(does("own", each, OWN_IMAGE.format(name=label_of(each))) for each in to_own)
    wrong = around.refused.get((thing.place, -1, -1), "")
    head += f'<p class="fp-refused" role="alert">{escape(wrong)}</p>' if wrong else ""
    if thing.copy_of and not written:
        name = thing.copy_of.partition(".")[2]
        return head + (
            f'<p class="fp-field-note">{escape(COPY.format(name=name))}</p>'
            f'<div class="fp-actions">{does("pick", thing.copy_of, f"Go to {name}")}{ways}</div>'
            f"{_facts(group)}"
        )
    notes = [FOR_ALL] if for_all else []
    if mirrored is False and written and not thing.copy_of:
        notes += [ONCE.format(mirror=MIRROR, other=other_side(thing.name))]
    notes += [OWN.format(name=thing.copy_of.partition(".")[2])] if thing.copy_of else []
    ways += does("alone", thing.place, ALONE) if for_all and thing.place else ""
    said = "".join(f'<p class="fp-field-note">{escape(words)}</p>' for words in notes)
    card = around.asked if around.asked_at == thing.place else ""
    return f'{head}{said}<div class="fp-actions">{ways}</div>{card}{_group(group, around)}'


def _ways(thing: Thing, around: Around, *, written: bool, mirrored: bool | None) -> str:
    found = ""
    if thing.section in addresses.IN_SPACE:
        to = escape(addresses.space(around.file, around.option, thing.place))
        found += f'<a class="fp-button" href="{to}">See it in space</a>'
    if not written or thing.place == thing.section:
        return found
    if mirrored is not None:
        what, words = ("unmirror", "Take its mirror image away") if mirrored else ("mirror", MIRROR)
        found += does(what, thing.place, words)
    return found + _of(thing.place, thing.name, named=True)


def _of(place: str, name: str, *, named: bool) -> str:
    """What can be done to a thing as a whole."""
    other = does("rename", place, "Rename it", f"Rename {name}") if named else ""
    return other + does("remove", place, f"Take {name} out")


def _group(group: Group, around: Around) -> str:
    shown = [one for one in group.fields if one.written or one.needed or one.many or one.problems]
    folded = [one for one in group.fields if one not in shown]
    own = "".join(field_html(one, around) for one in shown)
    more = "".join(field_html(one, around) for one in folded)
    waits = (*around.refused, *around.clashes)
    wrong = any(place == one.place for one in folded for place, _, _ in waits)
    fold = f"<details{' open' if wrong else ''}><summary>{MORE} ({len(folded)})</summary>{more}</details>"
    return own + _within(group, around) + (fold if folded else "")


def _inner(group: Group, around: Around) -> str:
    """A thing within a thing, such as a port."""
    name = group.place.rpartition(".")[2]
    called = f"number {name}" if name.isdecimal() else name
    ways = _of(group.place, called, named=group.named) if group.member else ""
    note = f'<p class="fp-small fp-field-help">{escape(around.said(group.note))}</p>' if group.note else ""
    card = around.asked if around.asked_at == group.place else ""
    return (
        f'<section class="fp-form-group" data-place="{escape(group.place)}"><h3>{escape(group.title)}</h3>'
        f'{note}{_group(group, around)}<div class="fp-actions">{ways}</div>{card}</section>'
    )


def _within(group: Group, around: Around) -> str:
    """What stands within a thing, and after each sort of it the way to another one."""
    found = ""
    for sort in group.adds:
        own = (each for each in group.groups if each.place.rpartition(".")[0] == sort.section)
        found += "".join(_inner(each, around) for each in own) + _add(sort, around)
    sections = {sort.section for sort in group.adds}
    single = (each for each in group.groups if each.place.rpartition(".")[0] not in sections)
    return found + "".join(_inner(each, around) for each in single)


def _add(sort: Sort, around: Around) -> str:
    word = word_for(sort)
    if around.asked_at == word:
        return around.asked
    return f'<div class="fp-actions">{does("add", word, f"Add a {around.said(sort.name)}")}</div>'


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
