"""Pure functions of plain SI numbers, one small file per subject.

A formula's docstring is read by the program: it prints the equation, the units and the source from
there, so that what is calculated and what is shown cannot drift apart. Every formula moves in one
direction with each argument while the others stand still; that is what lets a range be carried by
evaluating its corners. Outside its validity a formula raises ValueError.
"""
