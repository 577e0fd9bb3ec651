"""Values that carry their story: what all stages exchange instead of bare numbers."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from enum import Enum, IntEnum, StrEnum
from functools import cache, lru_cache
from itertools import product
from typing import TYPE_CHECKING, NoReturn

from firmpedal.hashing import HashKept, hash_kept
from firmpedal.units import Dimension, dimension_of

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable


class Mark(IntEnum):
    """How far a number can be trusted, best first; a result is as good as its worst input."""

    READ = 0
    MEASURED = 1
    DERIVED = 2
    MEMORY = 3
    ESTIMATE = 4
    ASSUMED = 5

    @property
    def word(self) -> str:
        return self.name.lower()

    @property
    def guessed(self) -> bool:
        """Whether nobody has looked yet, neither at the thing nor in a source."""
        return self >= Mark.MEMORY


class Answer(Enum):
    """The three answers a comparison can have."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"


def worst(answers: Iterable[Answer]) -> Answer:
    """No if one is no, else unknown if one is unknown, else yes."""
    given = set(answers)
    return next((answer for answer in (Answer.NO, Answer.UNKNOWN) if answer in given), Answer.YES)


class When(StrEnum):
    """From when on something is there to be measured."""

    NOW = "now"
    IN_HAND = "in hand"  # once the part is bought
    FITTED = "fitted"  # once the line hangs in the aircraft
    TRIED = "tried"  # once it has braked


@hash_kept
@dataclass(frozen=True, slots=True)
class Missing(HashKept):
    """One thing somebody has to measure or look up before a number can be given.

    `dimension` says what kind of figure it is, where it is one, `when` from when on it is there.
    """

    place: str
    what: str
    dimension: Dimension | None = field(default=None, compare=False)
    when: When = field(default=When.NOW, compare=False)


@dataclass(frozen=True, slots=True)
class Step:
    """The sum behind a value: the equation as printed and what went into it, by symbol.

    `caution` is what to keep in mind where the equation is near the end of what it holds for.
    """

    equation: str
    inputs: tuple[tuple[str, Value], ...]
    note: str = ""
    caution: str = ""


@hash_kept
@dataclass(frozen=True, slots=True)
class Value(HashKept):
    """A number with its story: SI span or unknown, mark, place in the file, source and sum.

    `span` is the lowest and highest the number can be, in SI; both are equal for a plain number
    and it is None when the number is unknown. `missing` then lists what to measure; with a range it is
    what would narrow it, where that is more than measuring again.
    """

    label: str
    dimension: Dimension
    span: tuple[float, float] | None
    mark: Mark = Mark.DERIVED
    place: str = ""
    source: str = ""
    step: Step | None = None
    missing: tuple[Missing, ...] = ()

    @property
    def known(self) -> bool:
        return self.span is not None

    @property
    def exact(self) -> bool:
        return self.span is not None and self.span[0] == self.span[1]

    @property
    def low(self) -> float:
        return (self.span or self._no_span())[0]

    @property
    def high(self) -> float:
        return (self.span or self._no_span())[1]

    @property
    def middle(self) -> float:
        low, high = self.span or self._no_span()
        return low if low == high else (low + high) / 2

    def _no_span(self) -> NoReturn:
        raise UnknownValueError(self)

    def named(self, label: str, place: str | None = None, mark: Mark | None = None) -> Value:
        """Give the same value another label and, if wanted, another place and mark."""
        return _named(
            self, label, self.place if place is None else place, self.mark if mark is None else mark
        )

    def at_most(self, limit: Value) -> Answer:
        """Say whether this value is surely at or under a limit, surely over it, or neither."""
        if self.span is None or limit.span is None:
            return Answer.UNKNOWN
        if self.high <= limit.low:
            return Answer.YES
        return Answer.NO if self.low > limit.high else Answer.UNKNOWN

    def at_least(self, limit: Value) -> Answer:
        """Say whether this value is surely at or over a limit, surely under it, or neither."""
        return limit.at_most(self)

    def sources(self) -> frozenset[tuple[str, Mark]]:
        """Collect every source in this value's story with the mark it was taken with.

        The source of a sum is its formula, which was read; how far its inputs can be trusted is
        said at the inputs.
        """
        own = {(self.source, Mark.READ if self.step else self.mark)} if self.source else set()
        inner = [value.sources() for _, value in self.step.inputs] if self.step else []
        return frozenset(own).union(*inner)


class UnknownValueError(Exception):
    """Somebody asked for the number of an unknown value: a mistake in our code, not in the file."""

    def __init__(self, value: Value) -> None:
        super().__init__(f"{value.label} is unknown ({value.place or 'no place'})")


@lru_cache(maxsize=8192)
def _named(value: Value, label: str, place: str, mark: Mark) -> Value:
    return replace(value, label=label, place=place, mark=mark)


def exactly(
    label: str, dimension: Dimension, number: float, mark: Mark, *, source: str = "", place: str = ""
) -> Value:
    """Make a plain number into a value."""
    return Value(label, dimension, (number, number), mark, place, source)


def unknown(label: str, dimension: Dimension, place: str, what: str = "") -> Value:
    """Make a value that somebody still has to measure."""
    return Value(
        label, dimension, None, Mark.MEASURED, place, missing=(Missing(place, what or label, dimension),)
    )


def all_missing(values: Iterable[Value]) -> tuple[Missing, ...]:
    """Collect what has to be measured for these values, each once, in order."""
    return tuple(dict.fromkeys(missing for value in values for missing in value.missing))


def total(label: str, values: Iterable[Value], place: str = "") -> Value:
    """Add values of one dimension; an empty sum is an error, an unknown part makes it unknown."""
    return _added(label, tuple(values), place)


@lru_cache(maxsize=8192)
def _added(label: str, parts: tuple[Value, ...], place: str) -> Value:
    mark = max((part.mark for part in parts), default=Mark.DERIVED)
    step = Step(" + ".join(f"x{n}" for n in range(1, len(parts) + 1)), _numbered(parts))
    spans = [part.span for part in parts if part.span is not None]
    if len(spans) < len(parts):
        return Value(label, parts[0].dimension, None, mark, place, step=step, missing=all_missing(parts))
    span = (sum(low for low, _ in spans), sum(high for _, high in spans))
    return Value(label, parts[0].dimension, span, max(mark, Mark.DERIVED), place, step=step)


def _numbered(parts: tuple[Value, ...]) -> tuple[tuple[str, Value], ...]:
    return tuple((f"x{n}", part) for n, part in enumerate(parts, 1))


def largest(label: str, values: Iterable[Value], place: str = "") -> Value:
    """Take the largest of some values of one dimension; unknown if any is."""
    return _picked("largest", max, label, tuple(values), place)


def smallest(label: str, values: Iterable[Value], place: str = "") -> Value:
    """Take the smallest of some values of one dimension; unknown if any is."""
    return _picked("smallest", min, label, tuple(values), place)


def _picked(
    word: str, pick: Callable[[list[float]], float], label: str, parts: tuple[Value, ...], place: str
) -> Value:
    mark = max(part.mark for part in parts)
    step = Step(f"{word} of " + ", ".join(f"x{n}" for n in range(1, len(parts) + 1)), _numbered(parts))
    spans = [part.span for part in parts if part.span is not None]
    if len(spans) < len(parts):
        return Value(label, parts[0].dimension, None, mark, place, step=step, missing=all_missing(parts))
    span = (pick([low for low, _ in spans]), pick([high for _, high in spans]))
    return Value(label, parts[0].dimension, span, max(mark, Mark.DERIVED), place, step=step)


def any_of(label: str, values: Iterable[Value], place: str, words: str, *, source: str = "") -> Value:
    """Make a value that may be any of some of one dimension, from the least to the greatest of them.

    Args:
        label: Of the value.
        values: What it may be; one at least.
        place: Of the value.
        words: Why it may be any of them, as its sum says it.
        source: Of the value.
    """
    parts = tuple(values)
    mark = max(Mark.DERIVED, *(part.mark for part in parts))
    step = Step(words, _numbered(parts))
    spans = [part.span for part in parts if part.span is not None]
    if len(spans) < len(parts):
        return Value(label, parts[0].dimension, None, mark, place, step=step, missing=all_missing(parts))
    span = (min(low for low, _ in spans), max(high for _, high in spans))
    return Value(label, parts[0].dimension, span, mark, place, source, step)


@dataclass(frozen=True, slots=True)
class Argument:
    """One argument of a formula as its docstring declares it."""

    name: str
    symbol: str
    words: str
    unit: str


@dataclass(frozen=True, slots=True)
class Story:
    """What a formula's docstring says: title, equation, arguments, result, source."""

    title: str
    equation: str
    arguments: tuple[Argument, ...]
    unit: str
    source: str


_ARGUMENT = re.compile(r"^\s+(?P<name>\w+): (?P<symbol>\S+?), (?P<words>.*?) \[(?P<unit>[^\]]+)\]\.$")
_SOURCE = re.compile(r"Source: \[(?P<key>[^\]]+)\]")


@cache
def story_of(formula: Callable[..., float]) -> Story:
    """Read a formula's docstring, the one place where its equation, units and source stand.

    Raises:
        ValueError: The docstring is not written as docs/contributing.md asks.
    """
    lines = (formula.__doc__ or "").splitlines()
    joined = _joined_section(lines, "Args:")
    arguments = tuple(Argument(**found.groupdict()) for line in joined if (found := _ARGUMENT.match(line)))
    returns = " ".join(_joined_section(lines, "Returns:"))
    unit = re.search(r"\[([^\]]+)\]\.", returns)
    source = _SOURCE.search(" ".join(lines))
    equation = [line.strip() for line in lines[1:] if line.strip()]
    if len(arguments) != formula.__code__.co_argcount or not unit or not source or not equation:
        raise ValueError(f"{formula.__qualname__}: docstring lacks an argument, a unit or a source")
    return Story(lines[0].strip().rstrip("."), equation[0], arguments, unit.group(1), source.group("key"))


def _joined_section(lines: list[str], title: str) -> list[str]:
    """Give the entries of one docstring section, each joined to one line."""
    start = next((n for n, line in enumerate(lines) if line.strip() == title), None)
    if start is None:
        return []
    outer = len(lines[start]) - len(lines[start].lstrip())
    entries: list[str] = []
    for line in lines[start + 1 :]:
        indent = len(line) - len(line.lstrip())
        if not line.strip() or indent <= outer:
            break
        if indent > outer + 4 and entries:
            entries[-1] += " " + line.strip()
        else:
            entries.append(line)
    return entries


def apply(formula: Callable[..., float], label: str, *, place: str = "", **inputs: Value) -> Value:
    """Evaluate a formula on values and keep the sum.

    Every formula is monotonic in each argument within its validity, so a range is carried by
    evaluating the corners. An unknown input makes the result unknown.

    Raises:
        ValueError: An argument has another dimension than the formula's docstring says.
    """
    return _applied(formula, label, place, tuple(inputs.items()))


@lru_cache(maxsize=32768)  # the same sum again is the same value: what hangs on it is found at once
def _applied(
    formula: Callable[..., float], label: str, place: str, inputs: tuple[tuple[str, Value], ...]
) -> Value:
    story, given = story_of(formula), dict(inputs)
    ordered = [given[argument.name] for argument in story.arguments]
    for argument, value in zip(story.arguments, ordered, strict=True):
        if dimension_of(argument.unit) is not value.dimension:
            raise ValueError(f"{formula.__qualname__}: {argument.name} got a {value.dimension.value}")
    symbols = [argument.symbol for argument in story.arguments]
    step = Step(story.equation, tuple(zip(symbols, ordered, strict=True)), story.title)
    mark, dimension = max([Mark.DERIVED, *[value.mark for value in ordered]]), dimension_of(story.unit)
    spans = [value.span for value in ordered if value.span is not None]
    if len(spans) < len(ordered):
        return Value(label, dimension, None, mark, place, story.source, step, all_missing(ordered))
    try:
        results = [formula(*corner) for corner in product(*map(set, spans))]
    except ValueError as error:  # outside the formula's validity nothing is known
        missing = (Missing(place, f"{label}, with figures that make sense: {error}"),)
        return Value(label, dimension, None, mark, place, story.source, step, missing)
    return Value(label, dimension, (min(results), max(results)), mark, place, story.source, step)
