"""Sheets as HTML for screens: the words and marks of the printed packet, made to be read and filled in.

Every class begins with `fp-`; how they look stands in web/static/firmpedal.css. There is no script and
no style here, and no id, so that a page may show any blocks beside any others.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.export.html_drawings import drawing
from firmpedal.export.html_forms import blanks, bullets, fields
from firmpedal.export.html_tables import table
from firmpedal.export.html_words import Keys, quoted, said
from firmpedal.report.sheet import (
    Blanks,
    Bullets,
    Contents,
    Drawing,
    Facts,
    Fields,
    Figures,
    Group,
    Heading,
    Paragraph,
    Sum,
    Table,
    Tone,
)

if TYPE_CHECKING:
    from firmpedal.report.sheet import Block, Figure, Sheet

TOLD = (Tone.WARNING, Tone.CAUTION, Tone.NOTE)
FIRST = ' data-first=""'  # of a part that lies open where there is little room, too


def sheet_html(sheet: Sheet, *, titled: bool = True, parted: bool = False) -> str:
    """Write a sheet as one article under its title, which is a heading of the second rank.

    Args:
        sheet: What is on it.
        titled: Whether the title is written; not where it stands above the sheet already.
        parted: Whether what stands under each heading can be folded by itself; it lies open at first.
    """
    title = f"<h2>{said(sheet.title)}</h2>" if titled else ""
    subtitle = f'<p class="fp-subtitle">{said(sheet.subtitle)}</p>' if sheet.subtitle else ""
    keys = Keys(f"{sheet.title} {sheet.subtitle}")
    inner = _parted(sheet, keys) if parted else "".join(_block(block, keys) for block in sheet.blocks)
    return f'<article class="fp-sheet" aria-label="{quoted(sheet.title)}">{title}{subtitle}{inner}</article>'


def parts_of(blocks: tuple[Block, ...]) -> tuple[tuple[Heading | None, tuple[Block, ...]], ...]:
    """Blocks by what they stand under.

    Those before the first heading stand under none, and so do those after a group that has its own.
    """
    found: list[tuple[Heading | None, list[Block]]] = [(None, [])]
    for block in blocks:
        match block:
            case Heading():
                found.append((block, []))
            case Group((Heading() as heading, *rest)):
                found += [(heading, [Group(tuple(rest))]), (None, [])]
            case _:
                found[-1][1].append(block)
    return tuple((heading, tuple(rest)) for heading, rest in found)


def _parted(sheet: Sheet, keys: Keys) -> str:
    """A sheet of which each part can be folded under its heading; those wanted first are marked.

    What is told in a part, such as a CAUTION, is counted beside its heading, for whoever sees it folded.
    """
    made = ""
    for heading, rest in parts_of(sheet.blocks):
        inner = "".join(_block(block, keys) for block in rest)
        if heading is None:
            made += inner
            continue
        named = quoted(f"{sheet.title}: {heading.text}")
        made += (
            f'<details class="fp-part" data-fold="{named}"{FIRST if heading.first else ""} open="">'
            f"<summary><h3>{said(heading.text)}</h3>{_short(rest)}</summary>"
            f'<div class="fp-part-in">{inner}</div></details>'
        )
    return made


def _short(blocks: tuple[Block, ...]) -> str:
    """What stays to be seen of a part that is folded: what is told in it, and how much of it is ticked."""
    tones = [block.tone for block in blocks if isinstance(block, Paragraph)]
    told = [
        f"{tones.count(tone)} {tone}{'' if tones.count(tone) == 1 else 'S'}" for tone in TOLD if tone in tones
    ]
    words = f'<span class="fp-sheet-short">{said(", ".join(told))}</span>' if told else ""
    return f'{words}<span class="fp-sheet-short fp-sheet-ticked"></span>'


def html(blocks: tuple[Block, ...], within: str = "") -> str:
    """Write blocks one after the other; headings are of the third rank.

    Args:
        blocks: What a sheet is made of.
        within: What the blocks belong to. It goes into the names of what can be ticked and filled in, so
            that the same words on two sheets are two things.
    """
    keys = Keys(within)
    return "".join(_block(block, keys) for block in blocks)


def _block(block: Block, keys: Keys) -> str:  # noqa: C901, PLR0911  one line for each kind of block
    match block:
        case Heading(text):
            return f"<h3>{said(text)}</h3>"
        case Paragraph():
            return _paragraph(block)
        case Bullets():
            return bullets(block, keys)
        case Table():
            return table(block, keys)
        case Figures(items):
            return f'<dl class="fp-figures">{"".join(map(_figure, items))}</dl>'
        case Facts(rows):
            return f'<dl class="fp-facts">{_facts(rows)}</dl>'
        case Fields():
            return fields(block, keys)
        case Blanks():
            return blanks(block, keys)
        case Sum():
            return _sum(block)
        case Drawing():
            return drawing(block)
        case Group(inner):
            return f'<div class="fp-group">{"".join(_block(each, keys) for each in inner)}</div>'
        case Contents():
            return ""  # the numbers of pages are for paper; a screen has its own way from sheet to sheet


def _paragraph(block: Paragraph) -> str:
    if block.tone in TOLD:
        words = f'<strong class="fp-word">{block.tone}</strong> <span>{said(block.text)}</span>'
        return f'<p class="fp-told fp-{block.tone.lower()}">{words}</p>'
    tone = "" if block.tone is Tone.PLAIN else f' class="fp-{block.tone}"'
    return f"<p{tone}>{said(block.text)}</p>"


def _figure(item: Figure) -> str:
    note = f'<dd class="fp-small">{said(item.note)}</dd>' if item.note else ""
    return f'<div><dt>{said(item.label)}</dt><dd class="fp-figure">{said(item.text)}</dd>{note}</div>'


def _facts(rows: tuple[tuple[str, str], ...]) -> str:
    """Terms with what there is to say; a row without a term goes on with the one before."""
    found: list[str] = []
    for number, (term, text) in enumerate(rows):
        if term or not number:
            found.append(f"<dt>{said(term or 'also')}</dt>")
        found[-1] += f"<dd>{said(text)}</dd>"
    return "".join(f"<div>{each}</div>" for each in found)


def _sum(block: Sum) -> str:
    parts = [f'<p class="fp-result">{said(block.result)}</p>']
    parts += [f'<p class="fp-equation">{said(line)}</p>' for line in (block.equation, block.figures) if line]
    if block.where:
        parts.append(f'<ul class="fp-where">{"".join(f"<li>{said(line)}</li>" for line in block.where)}</ul>')
    if block.source:
        parts.append(f'<p class="fp-source">Source: {said(block.source)}</p>')
    return f'<div class="fp-sum">{"".join(parts)}</div>'
