"""What a thing or an option can be called: any name that stands in the file without quotes round it."""

from __future__ import annotations

from firmpedal.project.edit import EditError
from firmpedal.project.names import RESERVED, quoted, sign_in_words
from firmpedal.project.plain import quoted_if_needed

SUCH_AS = "left_leg"


def usable_name(name: str) -> str:
    """A name without more blanks than it needs.

    Raises:
        EditError: It cannot be a name.
    """
    name = " ".join(name.split())
    wrong = next((sign for sign in name if sign == "." or not _fits(f"a{sign}a")), "")
    if wrong:
        raise EditError(
            f"a name here cannot have {sign_in_words(wrong)} in it", f"write such as `{_could(name)}`"
        )
    if name and not _fits(f"{name[0]}a"):
        raise EditError(
            f"a name here cannot begin with {sign_in_words(name[0])}", f"write such as `{SUCH_AS}`"
        )
    if not name:
        raise EditError("it needs a name of its own", f"write one in letters, such as `{SUCH_AS}`")
    if name.lower() in RESERVED or not _fits(name):
        raise EditError(f"{quoted(name)} has a meaning of its own here", "choose another name")
    return name


def _could(name: str) -> str:
    """The name that is nearest to one with signs that cannot stand in it; an example where none is left."""
    kept = "".join(each if each != "." and _fits(f"a{each}a") else " " for each in name)
    could = " ".join(kept.split())
    return could if could and _fits(could) and could.lower() not in RESERVED else SUCH_AS


def _fits(name: str) -> bool:
    """Whether a name can stand in the file without quotes round it."""
    return quoted_if_needed(name) == name
