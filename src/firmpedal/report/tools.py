"""The tools for this job, each with what it is for; sizes come from the parts that are there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from firmpedal.catalog import catalogue
from firmpedal.model.part import Form
from firmpedal.model.stock import LineKind
from firmpedal.report.lengths import both, fine
from firmpedal.report.nuts import tightened, torque_used
from firmpedal.units import Dimension, show, show_span

if TYPE_CHECKING:
    from firmpedal.pipeline import Evaluation
    from firmpedal.quantity import Value

Row = tuple[str, str]  # tool, what for
BLEEDING = (
    ("pump bottle or pressure pot", "fills from the wheel up, where fluid pushes air out at the top"),
    ("chocks and eye protection", "before a line is opened; fluid burns and harms eyes and paint"),
)
WRENCHES = "for nuts and bodies, from the catalogue: some are estimates, try them on the part in hand"
CROWFOOT = "a crowfoot at right angles to the wrench changes nothing"
GAUGE = ("10x lens and a good lamp", "every flare is looked at, and every joint under pressure")


def tools(evaluation: Evaluation) -> tuple[Row, ...]:
    """What to have on the bench, in the order in which it is wanted."""
    kinds = {line.kind for line in evaluation.laid}
    rows: list[Row] = []
    if LineKind.TUBE in kinds:
        rows += _tube_tools(evaluation)
    if LineKind.PLASTIC in kinds:
        rows.append(("sharp blade or plastic tube cutter", "square ends on the plastic line, no scratches"))
    rows += _hole_tools(evaluation) + _wrenches(evaluation)
    rows += [GAUGE] if tightened(evaluation) else []
    return (*rows, *(BLEEDING if evaluation.laid else ()))


def _tube_tools(evaluation: Evaluation) -> list[Row]:
    """Cutter, flaring tool and bender for the tubes that are there."""
    sizes = dict.fromkeys(line.stock.phrase for line in evaluation.laid if line.kind is LineKind.TUBE)
    names = ", ".join(sizes)
    radii = [
        bend.radius for line in evaluation.laid if line.tube for bend in line.tube.bends if bend.radius.known
    ]
    shown = dict.fromkeys(both(radius, evaluation.display) for radius in radii)
    rows = [
        ("tube cutter with a sharp wheel", f"square cuts on {names}; little pressure, many turns"),
        ("deburring tool", "edges inside and outside, without thinning the wall"),
        ("flaring tool, 37 degrees", f"flares on {names}; a 45-degree tool makes flares that leak and crack"),
        ("callipers", "flare diameter, and how far the tube stands above its sleeve"),
    ]
    if shown:
        rows.append(("bender", f"centre line radius {', '.join(shown)}"))
    return rows


def _hole_tools(evaluation: Evaluation) -> list[Row]:
    """A hole for each size of bulkhead fitting in a panel."""
    sizes = {
        end.size
        for joint in evaluation.assembly.joints
        for part in joint.parts
        if part.needs_panel
        for end in part.dry_ends
        if end.form is Form.PANEL
    }
    show = fine(evaluation.display).value
    rows = []
    for size in catalogue().sizes:
        hole = size.value("bulkhead_hole_diameter")
        if size.dash in sizes and hole is not None:
            words = f"holes of {show(hole)} for {size.dash} bulkhead fittings; deburr both sides"
            rows.append(("step drill or hole cutter", words))
    return rows


def _wrenches(evaluation: Evaluation) -> list[Row]:
    """Open-ended wrenches by the flats of what is turned, and a torque wrench for the range of torques."""
    flats: dict[float, str] = {}
    for joint in evaluation.assembly.joints:
        for part in joint.parts:
            across = part.dimension("hex_across_flats", "body_across_wrench_flats")
            if across is not None and across.known:
                flats.setdefault(across.high, _wrench_size(across))
    sizes = tuple(dict.fromkeys(flats[width] for width in sorted(flats)))
    rows = [(f"open-ended wrenches {', '.join(sizes)}", WRENCHES)] if sizes else []
    nuts = tightened(evaluation)
    if nuts:
        rows.append(("second wrench for the body", "two wrenches at every nut: one holds, one turns"))
    used = [row.torque for nut in nuts if (row := torque_used(nut)) is not None]
    if used:
        unit = evaluation.display.unit(Dimension.TORQUE) or "N m"
        words = f"{show_span(_ends(used), unit)}, the torques of this list; {CROWFOOT}"
        rows.append(("torque wrench with open-ended crowfoot", words))
    return rows


def _ends(values: list[Value]) -> tuple[float, float]:
    return min(value.low for value in values), max(value.high for value in values)


def _wrench_size(across: Value) -> str:
    """The nominal size as it stands on a wrench: flats are made under it, so the next 1/16 in above."""
    return show(across.high, "in", fraction=16)
