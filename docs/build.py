"""Write the generated parts of the pages, or check that they are fresh.

python docs/build.py            writes them
python docs/build.py --check    changes nothing; names the pages that are stale and ends with 1
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

from generator import commands, formulas, keys, licences, rules, validation, words
from generator.region import Generator, PageError, filled

if TYPE_CHECKING:
    from collections.abc import Iterator

PAGES = Path(__file__).parent

# What stands between `<!-- generated: NAME ARGUMENT -->` and `<!-- end -->`, by its name.
GENERATORS: dict[str, Generator] = {
    "rules": rules.page,
    "validation": validation.page,
    "commands": commands.page,
    "licences": licences.page,
    "keys": keys.page,
    "units": keys.units,
    "formulas": formulas.page,
    "words": words.page,
}


def main(arguments: list[str]) -> int:
    """Write or check every page; the result is the exit code."""
    check = arguments == ["--check"]
    if arguments and not check:
        sys.stderr.write("usage: python docs/build.py [--check]\n")
        return 2
    try:
        stale = [(page, text) for page, text in _made() if page.read_text(encoding="utf-8") != text]
    except PageError as error:
        sys.stderr.write(f"{error}\n")
        return 1
    for page, text in stale:
        name = page.relative_to(PAGES.parent).as_posix()
        if check:
            sys.stderr.write(f"{name} is stale: run `make docs`, read the diff, and commit it\n")
        else:
            page.write_text(text, encoding="utf-8", newline="\n")
            sys.stdout.write(f"wrote {name}\n")
    return 1 if check and stale else 0


def _made() -> Iterator[tuple[Path, str]]:
    """Give every page with the text it should have."""
    for page in sorted(PAGES.glob("*.md")):
        yield page, filled(page.name, page.read_text(encoding="utf-8"), GENERATORS)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
