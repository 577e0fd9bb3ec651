"""Shapes in space: centrelines of tubes, hoses in every state, clamps, heights and distances."""
