"""What can be taken away from the pages: how each kind is handed over, and what of it takes long.

Whatever is for other programs stands under an address of its own, for phones get papers and no exports.
"""

from __future__ import annotations

from firmpedal.web import addresses

LONG = frozenset({"packet.pdf", "step.zip"})  # made in a process of their own
# By the ending: what a browser is told that it is, and whether it shows it or keeps it.
KINDS = {
    "pdf": ("application/pdf", "inline"),
    "txt": ("text/plain; charset=utf-8", "inline"),
    "csv": ("text/csv; charset=utf-8", "attachment"),
    "html": ("text/html; charset=utf-8", "attachment"),
    "zip": ("application/zip", "attachment"),
}
FOR_OTHERS = "zip"


def kind_of(name: str) -> tuple[str, str]:
    """What a browser is told of something to take away, by the ending of its name."""
    return KINDS[_ending(name)]


def fits(path: str, name: str) -> bool:
    """Whether something of that name is to be had under a path."""
    if _ending(name) not in KINDS:
        return False
    return path.startswith(addresses.EXPORTS) == (_ending(name) == FOR_OTHERS)


def _ending(name: str) -> str:
    return name.rpartition(".")[2]
