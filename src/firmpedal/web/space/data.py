"""The picture of a text, remembered like its answer."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from firmpedal.web.answers import REMEMBERED, answer
from firmpedal.web.space.pose import scene_json
from firmpedal.web.space.scene import Scene, scene_of

if TYPE_CHECKING:
    from firmpedal.web.answers import System


@lru_cache(maxsize=REMEMBERED)
def scene_for(text: str, file: str, option: str | None, system: System | None) -> Scene | None:
    """The picture of what a text comes to; none where it cannot be evaluated."""
    evaluation = answer(text, file, option, system).evaluation
    return None if evaluation is None else scene_of(evaluation)


def scene_text(text: str, file: str, option: str | None, system: System | None) -> str:
    """The same for the browser; empty where there is none."""
    scene = scene_for(text, file, option, system)
    return "" if scene is None else scene_json(scene)
