"""The builder's plain-text file, read into the model."""

from __future__ import annotations

from firmpedal.project.read import Reading, read_file, read_text

__all__ = ["Reading", "read_file", "read_text"]
