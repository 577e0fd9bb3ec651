"""What moves, and how the aircraft stands: a slider or buttons for each, and the way back to as measured."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from firmpedal.lay.states import measured_in, missing_of
from firmpedal.web.elements import box, button, put, put_words, said

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from nicegui import ui
    from nicegui.element import Element
    from nicegui.events import GenericEventArguments

    from firmpedal.model.aircraft import Aircraft
    from firmpedal.model.surroundings import State
    from firmpedal.web.space.pose import Pose

AS_MEASURED = "All as measured"
STEPS = 40  # from one end of a slider to the other
NOTHING_MOVES = "Nothing in this file moves."
HIGH = "High points, marked in the picture:"
STILL = "Shown where it was measured, because it is not known yet:"


class States:
    """The setting that the picture is shown in; empty for as measured."""

    def __init__(self, changed: Callable[[], None]) -> None:
        self.setting: dict[str, float | str] = {}
        self.attitude = ""
        self._changed = changed
        self._made: object = None
        self._sliders: dict[str, tuple[State, Element, ui.html]] = {}
        self._buttons: dict[tuple[str, str], ui.html] = {}
        with box("section", "fp-space-states", aria_label="What moves"):
            said("h2", "What moves")
            self._box = box()
            self._still = box(role="status")

    def fit(self, aircraft: Aircraft) -> None:
        """Take the states and attitudes of an answer; where they are others, all is as measured again."""
        made = (aircraft.states, aircraft.attitudes)
        if made != self._made:
            self._made = made
            self.setting, self.attitude = {}, ""
            self._build(aircraft)

    def show(self, aircraft: Aircraft, pose: Pose) -> None:
        """Show what is set, what stands high in it, and what cannot be shown moved."""
        for name, (state, slider, told) in self._sliders.items():
            value = self.setting.get(name, measured_in(state, ()))
            words = travelled(value)
            put(slider, value=f"{value}", aria_valuetext=words)
            put_words(told, words)
        for (name, word), each in self._buttons.items():
            put(each, aria_pressed=str(self._is(aircraft, name, word)).lower())
        self._still.clear()
        with self._still:
            _listed(HIGH, (words for _, _, words in pose.high))
            _listed(STILL, (item.what for item in pose.missing))

    def _is(self, aircraft: Aircraft, name: str, word: str) -> bool:
        if not name:
            return self.attitude == word
        state = next(each for each in aircraft.states if each.name == name)
        return str(self.setting.get(name, measured_in(state, ()))) == word

    def _build(self, aircraft: Aircraft) -> None:
        self._box.clear()
        self._sliders, self._buttons = {}, {}
        with self._box:
            if not aircraft.states:
                said("p", NOTHING_MOVES, "fp-small")
            for state in aircraft.states:
                (self._named if state.values else self._ranged)(state)
            known = [each for each in aircraft.attitudes if each.nose_up.known]
            if known:
                with self._group("How it stands"):
                    for word, name in (("as measured", ""), *((each.name, each.name) for each in known)):
                        made = button(word, partial(self._stand, name))
                        self._buttons["", name] = made
            if self._sliders or len(self._buttons) > 1:  # one position alone leads nowhere
                button(AS_MEASURED, self.measured)

    def _group(self, name: str) -> Element:
        group = box("div", "fp-space-state", role="group", aria_label=name)
        with group:
            said("span", name)
        return group

    def _ranged(self, state: State) -> None:
        lacking = missing_of((state,))
        with box("label", "fp-space-state"):
            said("span", state.name)
            if lacking:
                said("span", f"not known yet: {lacking[0].what}", "fp-small")
                return
            low, high = state.lowest.middle, state.highest.middle
            slider = box(
                "input", type="range", min=f"{low}", max=f"{high}", step=f"{(high - low) / STEPS or 1}"
            )
            told = said("span", "", "fp-figure")
        slider.on(
            "input",
            lambda event: self._slid(state.name, event),
            throttle=0.05,
            js_handler="(event) => emit(event.target.value)",
        )
        self._sliders[state.name] = (state, slider, told)

    def _named(self, state: State) -> None:
        with self._group(state.name):
            for word in state.values:
                made = button(word, partial(self._set, state.name, word))
                self._buttons[state.name, word] = made

    def _slid(self, name: str, event: GenericEventArguments) -> None:
        self._set(name, float(event.args))

    def _set(self, name: str, value: float | str) -> None:
        self.setting[name] = value
        self._changed()

    def _stand(self, attitude: str) -> None:
        self.attitude = attitude
        self._changed()

    def measured(self) -> None:
        """Bring everything back to where it was measured."""
        self.setting, self.attitude = {}, ""
        self._changed()


def travelled(value: float | str) -> str:
    """How far something that moves is from its middle or its end: the file counts full travel as 1."""
    return f"{round(100 * value)} % of full travel" if isinstance(value, float) else f"{value}"


def _listed(title: str, items: Iterable[str]) -> None:
    """A title with what stands under it; nothing where nothing does."""
    found = tuple(items)
    if found:
        said("p", title, "fp-small")
        with box("ul", "fp-list fp-small"):
            for words in found:
                said("li", words)
