"""A first file for a layout: everything that is there, and every measurement still unknown."""

from __future__ import annotations

from firmpedal.project.layouts.choice import CHOICES, Layout, LayoutError, chosen
from firmpedal.project.layouts.writing import layout_text

__all__ = ["CHOICES", "Layout", "LayoutError", "chosen", "layout_text"]
