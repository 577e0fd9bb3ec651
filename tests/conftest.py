"""Puts this folder on the import path, so that every suite can use `texts`; sets how random tests run."""

from hypothesis import settings

# No time limit per example: CI's machines are small and shared. A failing case is printed. An ordinary run
# draws the same cases for everybody, so that only a change turns it red; `make fuzz` draws others each time.
settings.register_profile("steady", deadline=None, print_blob=True, derandomize=True)
settings.register_profile("searching", deadline=None, print_blob=True)
settings.load_profile("steady")
