"""Tables as HTML that can also be read as stacked rows, each cell under the name of its column.

The roles say again what the tags say: browsers forget what a table is once its rows are stacked.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.export.html_forms import DONE, pen, tick
from firmpedal.export.html_words import lines, quoted, said
from firmpedal.report.sheet import BOX

if TYPE_CHECKING:
    from firmpedal.export.html_words import Keys
    from firmpedal.report.sheet import Table

Row = tuple[str, ...]


def table(block: Table, keys: Keys) -> str:
    """One table in a box of its own."""
    caption = f"<caption>{said(block.title)}</caption>" if block.title else ""
    head = "".join(_title(block, number) for number in range(len(block.columns)))
    naming = _naming(block)
    body = "".join(_row(block, row, naming, keys) for row in block.rows)
    return (
        f'<div class="fp-table-box"><table class="fp-table" role="table">{caption}'
        f'<thead role="rowgroup"><tr role="row">{head}</tr></thead>'
        f'<tbody role="rowgroup">{body}</tbody></table></div>'
    )


def _title(block: Table, number: int) -> str:
    if not block.columns[number]:
        return '<td role="cell"></td>'
    right = ' class="fp-right"' if number in block.right else ""
    return f'<th scope="col" role="columnheader"{right}>{said(block.columns[number])}</th>'


def _naming(block: Table) -> int:
    """The column that says what a row is about: else the first that holds a name, not a figure, in each."""
    if block.about is not None:
        return block.about
    columns = range(len(block.columns))
    named = (number for number in columns if _names(block, number))
    titled = (number for number in columns if block.columns[number] and number not in block.right)
    return next(named, next(titled, 0))


def _names(block: Table, number: int) -> bool:
    return all(row[number][:1].isalpha() for row in block.rows)


def _row(block: Table, row: Row, naming: int, keys: Keys) -> str:
    about = ", ".join(cell.split("\n")[0] for cell in row if cell not in ("", BOX))
    cells = "".join(_cell(block, row, number, naming, (keys, about)) for number in range(len(row)))
    return f'<tr role="row">{cells}</tr>'


def _cell(block: Table, row: Row, number: int, naming: int, fill: tuple[Keys, str]) -> str:
    text, title, (keys, about) = row[number], block.columns[number], fill
    classes = ["fp-right"] if number in block.right else []
    classes += ["fp-large"] if number in block.large else []
    if text == BOX:
        classes.append("fp-box")
        inner = tick(keys.of(*row, title), said(title or DONE), f"{about}: {title or DONE}")
    elif not text and number in block.pen:
        classes.append("fp-write")
        inner = pen(keys.of(*row, title), f"{about}: {title}" if about else title)
    else:
        classes += [] if text else ["fp-nothing"]
        classes += ["fp-count"] if number == naming and not _names(block, number) else []
        inner = lines(text)
    tag, role = ('th scope="row"', "rowheader") if number == naming else ("td", "cell")
    named = f' class="{" ".join(classes)}"' if classes else ""
    label = f' data-label="{quoted(title)}"' if title else ""
    return f'<{tag} role="{role}"{named}{label}>{inner}</{tag.split()[0]}>'
