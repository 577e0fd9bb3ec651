"""Pedal feel: force against travel of every pedal, from all that gives way."""
