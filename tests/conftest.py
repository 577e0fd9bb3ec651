"""Puts this folder on the import path, so that every suite can use `texts`."""
