"""Puts this folder on the import path, so that every suite can use `texts`; sets how random tests run."""

from hypothesis import settings

# No time limit per example: CI's machines are small and shared. A failing case is printed.
settings.register_profile("firmpedal", deadline=None, print_blob=True)
settings.load_profile("firmpedal")
