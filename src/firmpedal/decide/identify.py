"""What a measured port, fitting or tube can be: every candidate held against every measurement."""

from __future__ import annotations

from dataclasses import dataclass

from firmpedal.decide.engagement import Engagement, engagements
from firmpedal.decide.tell_apart import Difference, told_apart
from firmpedal.decide.thread_ends import Candidate, Quantity, known_threads, known_tubes
from firmpedal.quantity import Answer, Mark, Step, Value, exactly
from firmpedal.units import Dimension, from_unit

MOST_PAIRED = 5  # with more candidates left another measurement helps more than a list of pairs
CALLIPERS = exactly(
    "accuracy of callipers", Dimension.LENGTH, from_unit(0.003, "in"), Mark.ASSUMED, source="common-practice"
)
TEMPLATE = exactly(
    "accuracy of an angle laid on",
    Dimension.ANGLE,
    from_unit(2, "deg"),
    Mark.ASSUMED,
    source="common-practice",
)
COUNTED = exactly("pitches measured over", Dimension.NUMBER, 6, Mark.ASSUMED, source="common-practice")
ON_THE_EDGE = 1e-9  # of the accuracy: rounding of figures decides nothing


@dataclass(frozen=True, slots=True)
class Measured:
    """What somebody measured; whatever is None was not."""

    outside_diameter: Value | None = None
    inside_diameter: Value | None = None
    pitch: Value | None = None
    taper: Answer = Answer.UNKNOWN
    seat_angle: Value | None = None
    tube: Value | None = None
    turns: Value | None = None
    accuracy: Value = CALLIPERS
    angle_accuracy: Value = TEMPLATE
    counted: Value = COUNTED

    def value(self, quantity: Quantity) -> Value | None:
        return {
            Quantity.OUTSIDE: self.outside_diameter,
            Quantity.INSIDE: self.inside_diameter,
            Quantity.PITCH: self.pitch,
            Quantity.SEAT: self.seat_angle,
            Quantity.TUBE: self.tube,
        }.get(quantity)

    def allowed(self, quantity: Quantity) -> Value:
        """How far a measurement may lie off."""
        if quantity is Quantity.SEAT:
            return self.angle_accuracy
        if quantity is not Quantity.PITCH:
            return self.accuracy
        step = Step("a / n", (("a", self.accuracy), ("n", self.counted)))
        share = self.accuracy.high / self.counted.low
        mark = max(Mark.DERIVED, self.accuracy.mark, self.counted.mark)
        return Value("accuracy of one pitch", Dimension.LENGTH, (share, share), mark, step=step)

    @property
    def of_thread(self) -> bool:
        given = (self.outside_diameter, self.inside_diameter, self.pitch, self.seat_angle)
        return any(each is not None for each in given) or self.taper is not Answer.UNKNOWN

    @property
    def anything(self) -> bool:
        return self.of_thread or self.tube is not None or self.turns is not None


@dataclass(frozen=True, slots=True)
class Fit:
    """One measurement held against one candidate; without figures for a plain yes or no."""

    quantity: Quantity
    answer: Answer
    measured: Value | None = None
    expected: Value | None = None
    off: Value | None = None  # how far outside what is expected
    allowed: Value | None = None

    @property
    def strain(self) -> float:
        """How much of what is allowed is used up."""
        if self.off is None or self.allowed is None or not self.allowed.high:
            return 0.0
        return self.off.middle / self.allowed.high


@dataclass(frozen=True, slots=True)
class Judged:
    """A candidate with how well each measurement fits."""

    candidate: Candidate
    fits: tuple[Fit, ...]

    @property
    def remains(self) -> bool:
        return all(fit.answer is not Answer.NO for fit in self.fits)

    @property
    def refusals(self) -> tuple[Fit, ...]:
        return tuple(fit for fit in self.fits if fit.answer is Answer.NO)

    @property
    def rank(self) -> tuple[float, ...]:
        """Unanswered measurements, what is used up of the allowances, the distance from the middles."""
        unanswered = sum(fit.answer is Answer.UNKNOWN for fit in self.fits)
        middles = [
            abs(fit.measured.middle - fit.expected.middle) / fit.expected.middle
            for fit in self.fits
            if fit.measured and fit.expected
        ]
        return (unanswered, sum(fit.strain for fit in self.fits), sum(middles))


@dataclass(frozen=True, slots=True)
class Question:
    """One thing to identify: what remains, what is ruled out, and what tells the rest apart."""

    subject: str  # thread, tube
    remaining: tuple[Judged, ...]
    ruled_out: tuple[Judged, ...]
    differences: tuple[Difference, ...]
    measure_next: tuple[Quantity, ...]

    @property
    def paired(self) -> bool:
        return len(self.remaining) <= MOST_PAIRED

    @property
    def by_one_figure(self) -> bool:
        """Whether one remains by a single figure, which a worn thread can have by chance."""
        return len(self.remaining) == 1 and self._compared == 1

    @property
    def decided(self) -> bool:
        """Whether one remains, and more than one figure says so."""
        return len(self.remaining) == 1 and self._compared > 1

    @property
    def _compared(self) -> int:
        return sum(fit.measured is not None for fit in self.remaining[0].fits)


@dataclass(frozen=True, slots=True)
class Identification:
    """Everything that can be said about what was measured."""

    measured: Measured
    questions: tuple[Question, ...]
    engagements: tuple[Engagement, ...]

    @property
    def settled(self) -> bool:
        """Whether something fits everywhere, and no thread stops short or goes in too far."""
        fitting = all(question.remaining for question in self.questions)
        return fitting and all(each.good for each in self.engagements)


def identify(measured: Measured) -> Identification:
    """Hold what was measured against every thread and tube of the catalogue."""
    questions = []
    if measured.of_thread:
        questions.append(_question("thread", known_threads(), measured))
    if measured.tube is not None:
        questions.append(_question("tube", known_tubes(), measured))
    threads = questions[0].remaining if measured.of_thread else ()
    candidates = [judged.candidate for judged in threads] if measured.of_thread else list(known_threads())
    found = engagements(candidates, measured.turns) if measured.turns is not None else ()
    return Identification(measured, tuple(questions), found)


def _question(subject: str, candidates: tuple[Candidate, ...], measured: Measured) -> Question:
    judged = [Judged(candidate, _fits(candidate, measured, subject)) for candidate in candidates]
    remaining = tuple(sorted((each for each in judged if each.remains), key=lambda each: each.rank))
    ruled_out = tuple(
        sorted(
            (each for each in judged if not each.remains),
            key=lambda each: (len(each.refusals), sum(fit.strain for fit in each.refusals)),
        )
    )
    left = [each.candidate for each in remaining]
    pairs = told_apart(left, measured) if len(left) <= MOST_PAIRED else ()
    return Question(subject, remaining, ruled_out, pairs, _measure_next(subject, measured))


def _fits(candidate: Candidate, measured: Measured, subject: str) -> tuple[Fit, ...]:
    wanted = [Quantity.TUBE] if subject == "tube" else list(Quantity)
    fits = [
        _fit(quantity, value, candidate.value(quantity), measured.allowed(quantity))
        for quantity in wanted
        if (value := measured.value(quantity)) is not None
        and (quantity is not Quantity.TUBE or candidate.value(quantity) is not None)
    ]
    if subject == "thread" and measured.taper is not Answer.UNKNOWN:
        same = candidate.taper is measured.taper
        fits.append(
            Fit(Quantity.TAPER, Answer.YES if same else Answer.NO, expected=candidate.value(Quantity.TAPER))
        )
    return tuple(fits)


def _fit(quantity: Quantity, measured: Value, expected: Value | None, allowed: Value) -> Fit:
    if expected is None:
        return Fit(quantity, Answer.UNKNOWN, measured, None, None, allowed)
    distance = max(0.0, expected.low - measured.high, measured.low - expected.high)
    step = Step("x outside y", (("x", measured), ("y", expected)))
    mark = max(Mark.DERIVED, measured.mark, expected.mark)
    off = Value(f"{quantity} off", measured.dimension, (distance, distance), mark, step=step)
    fitting = distance <= allowed.high * (1 + ON_THE_EDGE)
    return Fit(quantity, Answer.YES if fitting else Answer.NO, measured, expected, off, allowed)


def _measure_next(subject: str, measured: Measured) -> tuple[Quantity, ...]:
    """What has not been measured yet, what tells most first."""
    if subject == "tube":
        return ()
    order = [Quantity.PITCH, Quantity.OUTSIDE, Quantity.TAPER, Quantity.SEAT]
    across = measured.outside_diameter is not None or measured.inside_diameter is not None
    known = {
        Quantity.PITCH: measured.pitch is not None,
        Quantity.OUTSIDE: across,
        Quantity.TAPER: measured.taper is not Answer.UNKNOWN,
        Quantity.SEAT: measured.seat_angle is not None,
    }
    return tuple(each for each in order if not known[each])
