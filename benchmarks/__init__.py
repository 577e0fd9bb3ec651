"""Our solvers beside independent ones on the same work, in the same run: ratios, never time limits."""
