"""One file for each page."""
