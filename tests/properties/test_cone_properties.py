"""The nearest direction in a cone, beside the library's own solver of non-negative least squares."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import nnls

from firmpedal.lay.cone import nearest_in_cone

numbers = st.floats(-1, 1, allow_subnormal=False).map(lambda value: round(value, 6))
vectors = st.tuples(numbers, numbers, numbers).filter(lambda each: np.linalg.norm(each) > 1e-3)
cones = st.lists(vectors, max_size=40).map(lambda rows: np.array(rows).reshape(-1, 3))


@settings(max_examples=300, deadline=None)
@given(cones, vectors)
def test_as_the_library_finds_it(planes, direction):
    nearest = nearest_in_cone(planes, np.array(direction))
    if not len(planes):
        assert nearest == pytest.approx(direction)
        return
    normals = planes / np.linalg.norm(planes, axis=1)[:, None]
    weights, _ = nnls(normals.T, -np.array(direction))
    assert nearest == pytest.approx(direction + normals.T @ weights, abs=1e-7)


@settings(max_examples=200, deadline=None)
@given(cones, vectors, st.lists(vectors, min_size=20, max_size=20))
def test_it_is_on_the_right_side_and_nothing_there_is_nearer(planes, direction, others):
    nearest = nearest_in_cone(planes, np.array(direction))
    off = np.linalg.norm(nearest - direction)
    assert (planes @ nearest >= -1e-9).all()
    for other in others:
        if (planes @ np.array(other) >= 0).all():
            for long in (0.2, 0.5, 1, 2):
                assert np.linalg.norm(long * np.array(other) - direction) >= off - 1e-9


@pytest.mark.parametrize(
    ("planes", "direction", "by_hand"),
    [
        ([(1, 0, 0)], (-1, 1, 0), (0, 1, 0)),  # onto one plane
        ([(1, 0, 0), (0, 3, 0)], (-1, -1, 2), (0, 0, 2)),  # onto the edge of two, of any length
        ([(1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1)], (1, 1, -1), (0, 0, 0)),  # nothing is left
        ([(0, 0, 0), (0, 0, 1)], (0, 0, 1), (0, 0, 1)),  # a plane that is none holds nothing
        ([(1, 0, 0), (1, 0, 0), (1, 1e-9, 0)], (-1, 0, 1), (0, 0, 1)),  # the same plane twice
    ],
)
def test_by_hand(planes, direction, by_hand):
    assert nearest_in_cone(np.array(planes, dtype=float), np.array(direction, dtype=float)) == pytest.approx(
        by_hand, abs=1e-6
    )
