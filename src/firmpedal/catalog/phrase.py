"""Stock phrases as builders write them: `tube 5052-O 1/4 x .035`, `hose -4 PTFE braided`."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, cast

from firmpedal.catalog.errors import StockError, advice, near_miss, quoted
from firmpedal.catalog.hoses import hose_families
from firmpedal.catalog.materials import fluid_names, fluids, folded, material_names, materials
from firmpedal.catalog.tubing import tube_of
from firmpedal.model.stock import LineKind
from firmpedal.quantity import Mark, Value
from firmpedal.units import Dimension, UnitError, read

if TYPE_CHECKING:
    from firmpedal.model.stock import Fluid, Hose, Material, Tube

_NUMBER = r"(?:\d{1,3}-)?\d{1,3}/\d{1,3}|\d{0,4}\.\d{1,6}|\d{1,4}\.?"
_UNIT = r"""(?:in\.?|inch|inches|mm|cm|"|'')"""
_SECTION = re.compile(
    rf"""(?<![\w./-])(?P<outside>{_NUMBER})\s*(?P<outside_unit>{_UNIT})?
         (?:\s*(?:OD|O\.D\.))?\s*[x\u00d7]\s*
         (?P<wall>{_NUMBER})\s*(?P<wall_unit>{_UNIT})?(?:\s*wall)?(?![\w./])""",
    re.VERBOSE | re.IGNORECASE | re.ASCII,
)
_DASH = re.compile(r"(?<!\S)(?:AN)?-?(?P<dash>\d{1,2})(?!\S)", re.ASCII)
_KINDS = {kind.value: kind for kind in LineKind} | {"line": LineKind.TUBE, "tubing": LineKind.TUBE}
_LONGEST_PHRASE = 200
_ALIKE = 0.75
_EXAMPLE = {
    LineKind.TUBE: "tube 5052-O 1/4 x .035",
    LineKind.HOSE: "hose -4 PTFE braided",
    LineKind.PLASTIC: "plastic nylon 1/4 x .040",
}
_EXAMPLES = tuple(_EXAMPLE.values())
_ONE_OF = f"such as {', '.join(_EXAMPLES[:-1])} or {_EXAMPLES[-1]}"


@dataclass(frozen=True, slots=True)
class _Phrase:
    """A phrase taken apart: the kind if it is said, the words left over, the section if there is one."""

    text: str
    kind: LineKind | None
    words: str
    section: re.Match[str] | None


@lru_cache(maxsize=512)
def stock(phrase: str, length_unit: str | None) -> Tube | Hose:
    """Give the tube, plastic line or hose that a phrase describes.

    Args:
        phrase: As the builder wrote it.
        length_unit: Unit of dimensions written without one, None where the file declares none.

    Raises:
        StockError: The phrase describes nothing that the catalogue has; the message says what.
    """
    parted = _take_apart(phrase)
    if parted.section is not None and parted.kind is not LineKind.HOSE:
        return _tube(parted, length_unit)
    if parted.kind is LineKind.HOSE or _is_hose(parted.words):
        return _hose(parted)
    raise StockError(
        f"{quoted(phrase)} gives no outside diameter and wall: write {_such_as(parted)}",
        choices=_EXAMPLES,
    )


def _such_as(parted: _Phrase) -> str:
    """An example of what somebody had in mind: by its material where it names one, else as it calls it."""
    names = material_names()
    named = {names[folded(word)] for word in parted.words.split() if folded(word) in names}
    kind = next((each.kind for each in materials() if each.name in named), parted.kind)
    if kind is None:
        return _ONE_OF
    word = "for plastic: " if kind is LineKind.PLASTIC else ""
    return f"{word}such as {_EXAMPLE[kind]}"


@lru_cache(maxsize=64)
def fluid(name: str) -> Fluid:
    """Give a brake fluid by its specification, however it is spelled.

    Raises:
        StockError: No such fluid; the message says the near miss or the choices.
    """
    known = fluid_names()
    found = known.get(folded(name[:_LONGEST_PHRASE]))
    if found is None:
        alike = {spelling: each for spelling, each in known.items() if _figures(spelling) == _figures(name)}
        raise _unknown(name, alike, tuple(each.name for each in fluids()), "brake fluid")
    return next(each for each in fluids() if each.name == found)


def _figures(words: str) -> list[str]:
    """The figures in a name: one with others is another fluid, and no slip of the pen."""
    return re.findall(r"\d+", words)


def _take_apart(phrase: str) -> _Phrase:
    text = " ".join(phrase.split())
    if not text or len(text) > _LONGEST_PHRASE:
        raise StockError(f"write what the line is made of: {_ONE_OF}", choices=_EXAMPLES)
    section = _SECTION.search(text)
    rest = text[: section.start()] + " " + text[section.end() :] if section else text
    words = rest.replace(",", " ").split()
    kinds = [_KINDS[word.casefold()] for word in words if word.casefold() in _KINDS]
    left = " ".join(word for word in words if word.casefold() not in _KINDS)
    return _Phrase(text, kinds[0] if kinds else None, left, section)


def _tube(parted: _Phrase, length_unit: str | None) -> Tube:
    material = _material(parted)
    outside, wall = _section(cast("re.Match[str]", parted.section), length_unit, parted.text)
    if 2 * wall.high >= outside.low:
        raise StockError(
            f"{quoted(parted.text)}: a wall of {wall.label} leaves no bore in a tube of {outside.label}"
        )
    named = f"{parted.text}: outside diameter", f"{parted.text}: wall"
    return tube_of(parted.text, material, outside.named(named[0]), wall.named(named[1]), outside.label)


def _material(parted: _Phrase) -> Material:
    known = material_names()
    name = known.get(folded(parted.words))
    kind = parted.kind
    if name is None:
        fitting = (each.name for each in materials() if kind is not LineKind.PLASTIC or each.kind is kind)
        raise _unknown(parted.words, known, tuple(fitting), "material of a line")
    material = next(each for each in materials() if each.name == name)
    if kind is LineKind.PLASTIC and material.kind is not kind:
        raise StockError(f"{material.name} is no plastic: write tube {material.name}")
    return material


def _unknown(words: str, known: dict[str, str], choices: tuple[str, ...], noun: str) -> StockError:
    """Say that a name is not in the catalogue, with the near miss among all spellings."""
    asked = folded(words[:_LONGEST_PHRASE])
    begun = (spelling for spelling in known if asked and spelling.startswith(asked))
    near = next(begun, "") or near_miss(asked, known, _ALIKE)
    suggestion = known.get(near, "")
    what = f"{quoted(words)} is not a {noun} known here" if words else f"no {noun} is named"
    return StockError(
        f"{what}: {advice(suggestion, choices, 'choose from')}", suggestion=suggestion, choices=choices
    )


def _section(found: re.Match[str], length_unit: str | None, phrase: str) -> tuple[Value, Value]:
    """Read outside diameter and wall; a unit written on one of them holds for both."""
    units = found["outside_unit"], found["wall_unit"]
    try:
        return (
            _dimension(found["outside"], units[0] or units[1] or length_unit, phrase),
            _dimension(found["wall"], units[1] or units[0] or length_unit, phrase),
        )
    except UnitError as error:
        raise StockError(f"{quoted(phrase)}: {error}", suggestion=error.suggestion) from error


def _dimension(number: str, unit: str | None, phrase: str) -> Value:
    """Read one dimension; its label is the trade's way to say it: 1/4 in, 6 mm."""
    measured = read(number if unit is None else f"{number.rstrip('.')} {unit}", Dimension.LENGTH)
    low, high = measured.span
    if low <= 0:
        raise StockError(f"{quoted(phrase)}: {number} is no size of a tube")
    return Value(f"{number} {measured.unit}", Dimension.LENGTH, (low, high), Mark.MEASURED)


def _is_hose(words: str) -> bool:
    left = folded(_DASH.sub(" ", words))
    return any(left in family.spellings for family in hose_families())


def _hose(parted: _Phrase) -> Hose:
    found = _DASH.search(parted.words)
    words = folded(_DASH.sub(" ", parted.words, count=1))
    family = next((each for each in hose_families() if words in each.spellings), None)
    if family is None:
        known = {spelling: each.usual_words for each in hose_families() for spelling in each.spellings}
        raise _unknown(words, known, tuple(each.usual_words for each in hose_families()), "kind of hose")
    sizes = dict(family.by_dash)
    dash = f"-{int(found['dash'])}" if found else ""
    if dash not in sizes:
        what = f"there is no {dash} of this hose" if dash else "the dash size is missing"
        raise StockError(
            f"{quoted(parted.text)}: {what}: choose from {', '.join(sizes)}", choices=tuple(sizes)
        )
    return replace(sizes[dash], phrase=parted.text)
