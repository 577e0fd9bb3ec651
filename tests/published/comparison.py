"""One published case: a figure of a source beside our number."""

from as_printed import as_printed

from firmpedal.formulas.references import entry

PROPERTY = "published case"
HOW = {"read", "derived", "memory"}


def compare(record, source, name, printed, ours, *, how="read", place="", off_by=None, why=""):
    """Hold one number of ours against a figure, and record both first, so that failures show too.

    Args:
        record: Called with PROPERTY and the case as plain data.
        source: Key in references.bib.
        name: What is worked out, in words.
        printed: The figure with its digits as the source has them, and its unit.
        ours: Our number in the same unit.
        how: `read` in the source; `derived` by us, apart from the program; from `memory`.
        place: Where in the source.
        off_by: Ours less the figure, where the two are known to differ.
        why: The reason for that difference.
    """
    entry(source)
    assert how in HOW
    assert (off_by is None) == (not why), "a difference needs a reason, and a reason a difference"
    figure = as_printed(printed)
    agrees = bool(figure == ours)
    known = {"source": source, "place": place, "name": name, "how": how}
    compared = {"ours": float(ours), "agrees": agrees, "off_by": off_by, "why": why}
    record(PROPERTY, {**known, "printed": figure.digits, "unit": figure.unit, **compared})
    if off_by is None:
        assert figure == ours, name
    else:
        assert not agrees, f"{name}: agrees with the figure, so there is no difference to explain"
        assert as_printed(off_by) == ours - float(figure.figure), f"{name}: differs by something else"
