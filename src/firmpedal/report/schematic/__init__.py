"""The circuit as a diagram: from the aircraft to marks on paper, each step a pure function.

nodes (what is drawn) -> layers (which row) -> order (what stands left of what) -> columns (where
across) -> channels (how lines run between rows) -> labels (words where there is room) -> picture.
"""
