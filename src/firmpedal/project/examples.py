"""The invented aircraft that come with the program, to play with and to begin from."""

from __future__ import annotations

from pathlib import Path

import firmpedal


def examples() -> dict[str, Path]:
    """The examples by name, from the installed package or else from a clone."""
    package = Path(firmpedal.__file__).parent
    folders = (package / "examples", package.parents[1] / "examples")
    folder = next((item for item in folders if item.is_dir()), folders[0])
    return {path.stem: path for path in sorted(folder.glob("*.yaml"))}


def story(path: Path) -> str:
    """What an example tells of itself: the first paragraph of its remarks."""
    lines = []
    for line in path.read_text(encoding="utf-8").splitlines():
        words = line.removeprefix("#").strip()
        if not line.startswith("#") or not words:
            break
        lines.append(words)
    return " ".join(lines)
