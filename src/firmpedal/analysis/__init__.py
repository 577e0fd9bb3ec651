"""From shapes to results: one file per analysis, each a function of frozen values."""
