"""Design rules: they look at everything, change nothing, and return findings."""
