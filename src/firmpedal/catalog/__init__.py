"""What can be bought: parts, tube, hose, plastic line and fluids, each figure with its source and mark."""

from firmpedal.catalog.catalogue import Catalogue, catalogue, find
from firmpedal.catalog.errors import CatalogueError, PartError, StockError
from firmpedal.catalog.phrase import fluid, stock
from firmpedal.catalog.records import Row
from firmpedal.catalog.sizes import DashSize, Thread, TorqueRow

__all__ = [
    "Catalogue",
    "CatalogueError",
    "DashSize",
    "PartError",
    "Row",
    "StockError",
    "Thread",
    "TorqueRow",
    "catalogue",
    "find",
    "fluid",
    "stock",
]
