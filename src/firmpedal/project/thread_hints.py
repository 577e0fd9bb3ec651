"""What somebody may have meant who wrote a thread in other words than the file's: our spelling of it.

Where one thread alone can be meant, it is named; where there are several, each is, with what tells it.
Nothing is taken for the one or the other.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, NamedTuple

from firmpedal.catalog import catalogue
from firmpedal.model.part import Form, Gender, Interface
from firmpedal.project.thread_spelling import TAPER, spelled_thread

if TYPE_CHECKING:
    from collections.abc import Callable

HOW = "write such as `1/8 NPT female`, `M10 x 1 female`, `-4 flare 37 male`"
BOTH, ONE = "is both male and female", "write one of the two"
SUPPOSE = "write what you suppose it is, such as `1/8 NPT female`, marked as `assumed` until somebody looks"
A_FITTING = "write the thread of the port that it goes into, such as `1/8 NPT female`"
A_HOSE = (
    "a hose is what a line is made of, such as `hose -4 PTFE braided`; here stands what the port itself has"
)
NO_READING, NO_GENDER = "is not a thread that can be read", "does not say male or female"

MALE, FEMALE = Gender.MALE, Gender.FEMALE
_GENDERS = {
    MALE: {"male", "m", "mpt", "mnpt", "external", "ext", "outside"},
    FEMALE: {"female", "f", "fpt", "fnpt", "internal", "int", "inside"},
}
_PIPE = {"npt", "nptf", "anpt", "pipe", "taper", "tapered", "mpt", "fpt", "mnpt", "fnpt"}
_BRITISH = {"bsp", "bspp", "bspt", "g", "r", "rp", "rc"}
_PARALLEL = {"nps", "npsc", "npsf", "npsm"}
_PER_INCH = {"1/8": 28, "1/4": 19}  # of British pipe threads, as the catalogue has them
_BOSS, _FLARE = {"boss", "orb", "ring"}, {"flare", "flared", "cone", "nut", "swivel", "jic"}
_LAST_DASH = 32
TOLD = {  # by form and gender: what such a port looks like
    (Form.FLARE_37, MALE): "an end with a cone",
    (Form.FLARE_37, FEMALE): "a nut or the swivel end of a hose",
    (Form.FLARE_45, MALE): "an end with a cone of 45 degrees, as on cars",
    (Form.FLARE_45, FEMALE): "a nut for it",
    (Form.BOSS, MALE): "an end with an O-ring under its hexagon",
    (Form.BOSS, FEMALE): "a hole with a place for an O-ring",
}

_METRIC = re.compile(r"\bm ?(\d{1,2})(?:(?: ?[x*/-] ?| )(\d(?:[.,]\d{1,2})?))?(?![\d.])")
_INCH = re.compile(r"(?<![\d/.-])(\d{1,2}/\d{1,2})(?: ?(?:in\b|inch))?(?: ?[-x] ?(\d\d)\b)?")
_FITTING = re.compile(r"\b(?:an|ms|as) ?\d{3,5}")
_DASH = re.compile(
    r"(?:\b(?:an|jic|orb|dash|size) ?-?|(?:^| )-|#) ?(\d{1,2})\b(?!/)"
    r"|(?<![\d/])(\d{1,2}) ?-?(?:an|flare|jic|boss|orb)\b"
)
_COMPRESSION = re.compile(r"(\d{1,2}/\d{1,2}|\d{1,2}) ?(mm)?")


class Hint(NamedTuple):
    """What is wrong with a thread as written, and what to write."""

    wrong: str
    advice: str


class _Said(NamedTuple):
    """What was written, in small letters; its words; the gender, where it says one."""

    text: str
    words: frozenset[str]
    gender: Gender | None


def thread_hint(text: str) -> Hint:
    """Say what is wrong with a thread that cannot be read, and what the file calls what may be meant."""
    folded = " ".join(text.casefold().replace("\N{MULTIPLICATION SIGN}", "x").replace('"', " in ").split())
    words = frozenset(re.findall(r"[a-z]+", _METRIC.sub(" ", folded)))
    genders = [gender for gender, own in _GENDERS.items() if own & words]
    if len(genders) == len(_GENDERS):
        return Hint(BOTH, ONE)
    if folded == "unknown":
        return Hint(NO_READING, SUPPOSE)
    said = _Said(folded, words, genders[0] if genders else None)
    return next((hint for one in _READERS if (hint := one(said)) is not None), Hint(NO_READING, HOW))


def _one_or_both(said: _Said, form: Form, size: str) -> Hint:
    """The form and the size are clear; the gender may be missing."""
    if said.gender is not None:
        return Hint(NO_READING, f"did you mean `{spelled_thread(Interface(form, size, said.gender))}`?")
    female, male = (spelled_thread(Interface(form, size, gender)) for gender in (FEMALE, MALE))
    return Hint(NO_GENDER, f"write `{female}` where the thread is inside, `{male}` where it is outside")


def _several(said: _Said, wrong: str, forms: tuple[Form, ...], size: str) -> Hint:
    """Each that can be meant, with what it looks like."""
    genders = (said.gender,) if said.gender is not None else (MALE, FEMALE)
    named = [
        f"`{spelled_thread(Interface(form, size, gender))}` for {TOLD[form, gender]}"
        for form in forms
        for gender in genders
    ]
    return Hint(wrong, f"write {', '.join(named)}")


def _fitting(said: _Said) -> Hint | None:
    return Hint("is a fitting, not a thread", A_FITTING) if _FITTING.search(said.text) else None


def _compression(said: _Said) -> Hint | None:
    found = _COMPRESSION.search(said.text)
    if found is None or not said.words & {"compression", "comp", "ferrule"}:
        return None
    unit = "mm" if found[2] or "/" not in found[1] else "in"
    return _one_or_both(said, Form.COMPRESSION, f"{found[1]} {unit}")


def _metric(said: _Said) -> Hint | None:
    found = _METRIC.search(said.text)
    if found is None:
        return None
    if found[2] is None:
        like = spelled_thread(Interface(Form.METRIC, f"M{int(found[1])}x1", said.gender or FEMALE))
        return Hint("does not say its pitch", f"write it too, from crest to crest in mm, such as `{like}`")
    pitch = float(found[2].replace(",", "."))
    return _one_or_both(said, Form.METRIC, f"M{int(found[1])}x{pitch:g}")


def _inch(said: _Said) -> Hint | None:
    """A fraction of an inch: a taper pipe thread, a British one, or the straight thread of a dash size."""
    found = _INCH.search(said.text)
    if found is None:
        return None
    size, pitch = found[1], found[2]
    if said.words & _PARALLEL:
        return None
    if said.words & _BRITISH or pitch == str(_PER_INCH.get(size)):
        return _british(said, size)
    if TAPER.get(size) == f"{size}-{pitch}" or (size in TAPER and pitch is None and said.words & _PIPE):
        return _one_or_both(said, Form.PIPE, TAPER[size])
    dashes = [each.dash for each in catalogue().sizes if each.thread == f"{size}-{pitch}"]
    if len(dashes) != 1:
        return None
    wrong = f"is the straight thread of size {dashes[0]}, and does not say what seals there"
    return _several(said, wrong, (Form.BOSS, Form.FLARE_37), dashes[0])


def _british(said: _Said, size: str) -> Hint | None:
    count, taper = _PER_INCH.get(size), TAPER.get(size)
    if count is None or taper is None:
        return None
    npt = spelled_thread(Interface(Form.PIPE, taper, said.gender or FEMALE))
    known = f"count its threads: with {taper.partition('-')[2]} to the inch it is `{npt}`"
    return Hint(
        "is a British pipe thread, for which no fitting is known here",
        f"{known}; with {count} it is British, and the two do not go together",
    )


def _dash(said: _Said) -> Hint | None:
    """A dash size: of a flare, of a boss, or of a hose."""
    found = _DASH.search(said.text)
    number = int(found[1] or found[2]) if found is not None else 0
    if not 0 < number <= _LAST_DASH:
        return None
    size = f"-{number}"
    if "hose" in said.words:
        return Hint("is not the thread of a port", A_HOSE)
    if said.words & _BOSS:
        return _one_or_both(said, Form.BOSS, size)
    angles = set(re.findall(r"\b(?:37|45)\b", said.text))
    if said.words & _FLARE or angles:
        return _flare(said, size, angles)
    hint = _several(said, "is a size, and does not say what is there", (Form.FLARE_37, Form.BOSS), size)
    return hint._replace(advice=f"{hint.advice}; a hose itself is what a line is made of")


def _flare(said: _Said, size: str, angles: set[str]) -> Hint:
    """An AN fitting has a cone of 37 degrees; a dash size alone does not say so."""
    if "nut" in said.words and said.gender is None:
        said = said._replace(gender=FEMALE)
    if angles == {"45"}:
        return _one_or_both(said, Form.FLARE_45, size)
    if angles == {"37"} or (not angles and said.words & {"jic", "an"}):
        return _one_or_both(said, Form.FLARE_37, size)
    return _several(said, "does not say the angle of its flare", (Form.FLARE_37, Form.FLARE_45), size)


_READERS: tuple[Callable[[_Said], Hint | None], ...] = (_fitting, _compression, _metric, _inch, _dash)
