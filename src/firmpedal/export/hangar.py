"""The page for the hangar: one HTML file with all that is in it, which asks nobody for anything.

A policy in its head forbids every request, and every style and script but its own, known by their sums.
"""

from __future__ import annotations

import base64
import json
from hashlib import sha256
from importlib import resources
from typing import TYPE_CHECKING

from firmpedal.export.html import html, sheet_html
from firmpedal.export.html_words import quoted, said
from firmpedal.export.place_words import named
from firmpedal.report.cover import verdict_line
from firmpedal.report.hangar import hangar_sheets
from firmpedal.report.packet import footer_of
from firmpedal.report.rewording import reworded
from firmpedal.report.sheet import Paragraph, Tone

if TYPE_CHECKING:
    from pathlib import Path

    from firmpedal.pipeline import Evaluation
    from firmpedal.report.packet import Footer
    from firmpedal.report.sheet import Sheet

LOOK = ("web/static/firmpedal.css", "export/hangar.css")
SCRIPT = "export/hangar.js"
CARDS = "All cards"
UNKEPT = f"This browser keeps nothing of what you tick. Copy it as text before you close it: see {CARDS}."
NO_SCRIPT = "This browser runs no script here: nothing of what you tick is kept."


def write(evaluation: Evaluation, options: tuple[Evaluation, ...], path: Path) -> int:
    """Write the page of an evaluation; the result is the number of cards.

    Raises:
        OSError: The file cannot be written.
    """
    sheets = hangar_sheets(evaluation, options)
    made = page(sheets, footer_of(evaluation), verdict_line(evaluation))
    path.write_text(made, encoding="utf-8", newline="\n")
    return len(sheets)


def page(sheets: tuple[Sheet, ...], footer: Footer, verdict: str) -> str:
    """Put sheets on one page, the first of them before the list of all. Same sheets, same page.

    Places of the file are named in words: here is no text to go to, and nobody reads keys at the wheel.

    Args:
        sheets: A card for each.
        footer: Of which aircraft, option and revision the page is a copy.
        verdict: In one line; it stands above every card, with the revision.
    """
    style, script = "\n".join(_text(name) for name in LOOK), _text(SCRIPT)
    title = f"{footer.aircraft}, {footer.option}"
    sheets = reworded(sheets, named)
    dated = ", ".join(word for word in (_revision(footer), footer.date) if word)
    first, *others = enumerate(sheets, 1)
    cards = "".join([_card(*first), _list(sheets), *(_card(*each) for each in others)])
    return f"""<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="{_policy(style, script)}">
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
<meta name="color-scheme" content="light dark">
<meta name="format-detection" content="telephone=no, date=no, address=no">
<title>{quoted(title)}: for the hangar</title>
<style>{style}</style>
</head>
<body class="fp-page">
<div class="fp-hangar">
<header class="fp-hangar-head"><h1>{said(title)}</h1>
<p>Copy of {said(dated)}</p><p><strong>{said(verdict)}</strong></p></header>
<div id="unkept" hidden>{html((Paragraph(UNKEPT, Tone.WARNING),))}</div>
<noscript>{html((Paragraph(NO_SCRIPT, Tone.WARNING),))}</noscript>
<main data-key="{quoted(_key(footer))}" data-head="{quoted(f"{title}, copy of {dated}. {verdict}")}">
{cards}
</main>
</div>
<nav class="fp-bar" aria-label="Cards">
<button class="fp-button" type="button" id="back">Back</button>
<button class="fp-button" type="button" id="all">{CARDS}</button>
<button class="fp-button fp-button-main" type="button" id="next">Next</button>
</nav>
<script>{script}</script>
</body>
</html>
"""


def _text(name: str) -> str:
    return (resources.files("firmpedal") / name).read_text(encoding="utf-8")


def _policy(style: str, script: str) -> str:
    """Nothing from anywhere: no picture, font, frame or request; this style and this script only."""
    parts = (
        "default-src 'none'",
        f"style-src '{_sum_of(style)}'",
        f"script-src '{_sum_of(script)}'",
        "base-uri 'none'",
        "form-action 'none'",
    )
    return "; ".join(parts)


def _sum_of(text: str) -> str:
    return f"sha256-{base64.b64encode(sha256(text.encode('utf-8')).digest()).decode('ascii')}"


def _revision(footer: Footer) -> str:
    return f"revision {footer.revision}" if footer.revision else "a file that names no revision"


def _key(footer: Footer) -> str:
    """Under which a browser keeps what is ticked: another revision or option begins afresh."""
    return json.dumps(
        ["firmpedal hangar", footer.aircraft, footer.revision, footer.option], ensure_ascii=False
    )


def _card(number: int, sheet: Sheet) -> str:
    named = quoted(sheet.title)
    inner = sheet_html(sheet).replace("<h2>", '<h2 tabindex="-1">', 1)
    return f'<div class="fp-hangar-card" id="card-{number}" data-title="{named}">{inner}</div>'


def _list(sheets: tuple[Sheet, ...]) -> str:
    """The list of cards, and what can be done with all that was ticked."""
    links = "".join(
        f'<li><a href="#card-{number}">{said(sheet.title)}<span></span></a></li>'
        for number, sheet in enumerate(sheets, 1)
    )
    return f"""<div class="fp-hangar-card" id="cards" data-title="{CARDS}">
<article class="fp-sheet" aria-label="{CARDS}"><h2 tabindex="-1">{CARDS}</h2>
<ul class="fp-cards">{links}</ul>
<div class="fp-tools"><h3>What I ticked</h3>
<p>It is kept in this browser only. Copy it as text and send it to yourself.</p>
<button class="fp-button fp-button-main" type="button" id="copy">Copy what I ticked as text</button>
<p role="status" id="told"></p>
<label class="fp-field"><span class="fp-field-words">The text</span>
<textarea class="fp-pen" id="text" readonly></textarea></label>
<button class="fp-button" type="button" id="clear">Begin again: take all ticks off</button></div>
</article></div>"""
