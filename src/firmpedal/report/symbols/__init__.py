"""Symbols of the circuit, one file per kind, as marks about a point; fluid comes from above.

Their geometry follows ISO 1219-1 where it has one, from memory and in our own strokes. Solid lines are
pipes; the weights are three steps of one scale.
"""
