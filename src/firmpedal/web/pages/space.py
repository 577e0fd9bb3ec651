"""The lines in space: the picture, what is chosen in it, what moves, and everything in a list."""

from __future__ import annotations

from functools import partial
from itertools import pairwise
from math import dist
from typing import TYPE_CHECKING, TypeVar

from firmpedal.project.edit import EditError
from firmpedal.units import Dimension
from firmpedal.web import addresses
from firmpedal.web.answers import answer
from firmpedal.web.elements import box, button, link, raw, said, working
from firmpedal.web.form.ways import ways
from firmpedal.web.sheets import sheets_html
from firmpedal.web.space.data import scene_for, scene_text
from firmpedal.web.space.details import Details, Doings
from firmpedal.web.space.element import Picture
from firmpedal.web.space.figures import not_placed, said_of
from firmpedal.web.space.listing import Listing
from firmpedal.web.space.mover import Mover
from firmpedal.web.space.plainly import corners_of, flat_drawings, triple, unit_of
from firmpedal.web.space.pose import pose_json, pose_of, setting_of
from firmpedal.web.space.states import States

if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from firmpedal.pipeline import Evaluation
    from firmpedal.web.answers import System
    from firmpedal.web.frame import Frame
    from firmpedal.web.space.figures import Said
    from firmpedal.web.space.mover import Held
    from firmpedal.web.space.pose import Pose
    from firmpedal.web.space.scene import Scene, Way

Done = TypeVar("Done")

TITLE = "The lines in space"
UNREADABLE = "There is no picture yet: the text cannot be read. Put it right first."
NOTHING_PLACED = (
    "Nothing has a place yet. What you measure shows here, each line as soon as its ends are known."
)
STALE = "Out of date. It is being worked out again."
WITHOUT = (
    "This browser cannot show the picture in space (it has no WebGL). Everything else on this page works, "
    "and here are the flat drawings of the lines."
)
KEY_WORDS = (
    "Tube is plain, hose is ringed, plastic is dashed. Sizes of fittings, ports and plates are not to scale; "
    "hose and plastic follow the way in the file, not how they hang."
)
LOOKS = {"From a corner": "corner", "From the left": "left", "From the front": "front", "From above": "above"}
NEARER = 1.4


class SpacePage:
    """The page of one option of one file, kept abreast of the document."""

    def __init__(self, frame: Frame, at: str) -> None:
        self.frame, self.watch, self._at = frame, frame.watch, at
        self._evaluation: Evaluation | None = None
        self._scene: Scene | None = None
        self._chosen, self._flat = "", False
        self._mover = Mover(self.watch)
        with frame.main:
            ways(frame.file, self.watch.option, "space")
            self._stale = working()
            self._empty = box(classes="fp-empty")
            with self._empty:
                said("p", UNREADABLE)
                link("Go to the text", addresses.text(frame.file, self.watch.option), "fp-button")
            self._all = box(classes="fp-space")
            with self._all:
                self._build()
        self._empty.set_visibility(False)
        self._all.set_visibility(False)
        self.watch.when_stale(self._out_of_date)
        self.watch.fill(scene_text, self._answered)
        self.watch.fill(self._flat_text, self._flat_shown)

    def _build(self) -> None:
        with box(classes="fp-space-seen"):
            self._pictured = box()
            with self._pictured:
                self._bare = said("p", NOTHING_PLACED, "fp-field-note")
                self._bare.set_visibility(False)
                self._picture = Picture()
                self._tools()
                said("p", KEY_WORDS, "fp-small")
            self._drawn = box(classes="fp-section")
        with box(classes="fp-space-beside"):
            self._details = Details(
                Doings(
                    self._step,
                    self._add,
                    self._remove,
                    self._make_point,
                    self._choose,
                    self._centre,
                    lambda single: self._picture.put(single=single),
                )
            )
            self._list = Listing(self._choose)
        self._states = States(self._move_things)
        self._picture.hear("pick", lambda told: self._choose(str(told.get("key", ""))))
        self._picture.hear("moved", self._dragged)
        self._picture.hear("step", lambda told: self._step(int(told["axis"]), int(told["sign"]), 1))
        self._picture.on("without", self._without)

    def _tools(self) -> None:
        with box("div", "fp-space-tools", role="group", aria_label="How the picture is looked at"):
            for words, name in LOOKS.items():
                button(words, partial(self._picture.run_method, "look", name))
            button("All of it", partial(self._picture.run_method, "look", ""))
            button("Nearer", partial(self._picture.run_method, "nearer", NEARER))
            button("Farther", partial(self._picture.run_method, "nearer", 1 / NEARER))

    def _out_of_date(self) -> None:
        self._stale.set_content(STALE)
        self._stale.set_visibility(True)

    def _answered(self, made: str) -> None:
        """Show what the text comes to now; what is chosen stays chosen as long as it is there."""
        self._stale.set_visibility(False)
        self._evaluation, self._scene = answer(*self.watch.key).evaluation, scene_for(*self.watch.key)
        self._all.set_visibility(bool(made))
        self._empty.set_visibility(not made and not self.watch.document.gone)
        if self._evaluation is None or self._scene is None:
            return
        self._mover.shown(self._evaluation)
        self._bare.set_visibility(not self._scene.keys)
        if self._at:
            self._chosen, self._at = self._scene.nearest_key(self._at), ""
            self._picture.put(at=self._chosen)
        elif self._chosen not in self._scene.keys:
            self._chosen = ""
        tape = self._mover.tape
        if tape is not None:
            self._details.measure(tape)
            self._picture.put(scene=made, mark=tape.mark, unit=unit_of(self._evaluation.display))
        self._show()

    def _show(self) -> None:
        """Show everything as it is now: the pose, what is chosen, its card, the list."""
        evaluation, scene = self._evaluation, self._scene
        if evaluation is None or scene is None:
            return
        self._states.fit(evaluation.aircraft)
        setting = setting_of(self._states.setting, evaluation.aircraft.states)
        pose = pose_of(evaluation, scene, setting, self._states.attitude)
        self._states.show(evaluation.aircraft, pose)
        self._list.show(scene, self._chosen, not_placed(evaluation.aircraft, scene))
        self._picture.put(
            pose=pose_json(pose), chosen=self._chosen, handles=self._handles(evaluation, scene, pose)
        )
        self._show_card(evaluation, scene, pose)

    def _handles(self, evaluation: Evaluation, scene: Scene, pose: Pose) -> list[dict[str, object]]:
        """The corners of the line that is chosen, and whether each can be dragged."""
        way = scene.line_of(self._chosen) if self._chosen else None
        if way is None or pose.moved:
            return []
        held = ((spot.key, self._mover.held(evaluation, scene, spot.key)) for spot in way.corners)
        return [{"key": key, "free": each.free} for key, each in held]

    def _show_card(self, evaluation: Evaluation, scene: Scene, pose: Pose) -> None:
        key = self._chosen
        told: Said | None = said_of(evaluation, scene, key) if key else None
        corner = any(spot.key == key for way in scene.ways for spot in way.corners)
        held: Held | None = self._mover.held(evaluation, scene, key) if corner else None
        way = scene.way(key)
        legs = [] if way is None else [dist(*pair) for pair in pairwise(corners_of(way))]
        field = addresses.field(self.frame.file, told.place, self.watch.option) if told else ""
        lengths = tuple(evaluation.display.number(each, Dimension.LENGTH) for each in legs)
        self._details.show(told, field, held, moved=pose.moved, legs=lengths)

    def _choose(self, key: str) -> None:
        self._details.refused("")
        known = self._scene is not None and key in self._scene.keys
        self._chosen = key if known else ""
        self._show()

    def _move_things(self) -> None:
        self._details.refused("")
        self._show()

    def _dragged(self, told: dict[str, Any]) -> None:
        key, single = str(told.get("key", "")), bool(told.get("single"))
        by, view = triple(told.get("by")), triple(told.get("view"))
        self._chosen = key
        self._try(lambda scene: self._mover.drag(scene, key, by, view, single=single))

    def _step(self, axis: int, sign: int, marks: int) -> None:
        tape = self._mover.tape
        if tape is None or not self._chosen:
            return
        by = sign * marks * tape.mark
        to = self._try(lambda scene: self._mover.step(scene, self._chosen, axis, by))
        if to is not None:
            self._picture.run_method("ahead", self._chosen, to)

    def _add(self, leg: int) -> None:
        way = self._way()
        if way is not None:
            corners = corners_of(way)
            ends = (corners[leg], corners[leg + 1])
            key = self._try(lambda _: self._mover.add(way, leg, ends))
            self._chosen = key or self._chosen

    def _remove(self) -> None:
        way, key = self._way(), self._chosen
        if way is not None:
            self._chosen = self._try(lambda _: self._mover.remove(way, key)) or key

    def _make_point(self) -> None:
        way, key = self._way(), self._chosen
        if way is not None:
            self._try(lambda scene: self._mover.make_point(scene, way, key))

    def _centre(self) -> None:
        self._picture.run_method("centre", self._chosen)

    def _way(self) -> Way | None:
        return self._scene.line_of(self._chosen) if self._scene is not None and self._chosen else None

    def _try(self, does: Callable[[Scene], Done]) -> Done | None:
        """Change the file, or say why it was not changed, and show what is there."""
        if self._scene is None:
            return None
        try:
            done = does(self._scene)
        except EditError as refusal:
            self._details.refused(
                " ".join(f"{words}." for words in (str(refusal), refusal.suggestion) if words)
            )
            self._picture.run_method("settle")
            self._show()
            return None
        self._details.refused("")
        return done

    def _without(self) -> None:
        """Put the flat drawings of the cards in the place of the picture, from the next answer on."""
        self._flat = True
        self._pictured.set_visibility(False)
        self.watch.again()

    def _flat_text(self, text: str, file: str, option: str | None, system: System | None) -> str:
        return sheets_html(flat_drawings, text, file, option, system) if self._flat else ""

    def _flat_shown(self, made: str) -> None:
        self._drawn.clear()
        if self._flat:
            with self._drawn:
                said("p", WITHOUT, role="status")
                raw(made, classes="fp-pane")
