"""Yardfast tells whether a yard piece stands in the wind, and what holds it down.

    import yardfast as yf
    result = yf.check(yf.read('light-tower.toml'))

Arguments are pint quantities or text as in a design file; results are quantities. Importing this
imports nothing else: each name is fetched when it is first used.
"""

from importlib import import_module

__version__ = "0.1.0"

__all__ = [
    "Design",
    "DesignError",
    "Fault",
    "Q",
    "Result",
    "Sizes",
    "UnitError",
    "check",
    "check_many",
    "embedment",
    "lateral",
    "read",
    "return_period",
    "size",
    "velocity_pressure",
    "withdrawal",
]

_PLACES = {
    "Design": "design.model",
    "DesignError": "design.faults",
    "Fault": "design.faults",
    "Q": "units",
    "Result": "report.data.result",
    "Sizes": "report.screens.sizes",
    "UnitError": "units",
    "check": "report.data.checking",
    "check_many": "report.data.catalogue",
    "embedment": "checks.anchoring.capacity.public_ground",
    "lateral": "checks.timber.nds.public",
    "read": "checks.inputs",
    "return_period": "loads.public_how_often",
    "size": "report.screens.sizes",
    "velocity_pressure": "loads.public",
    "withdrawal": "checks.timber.nds.public",
}

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .checks.anchoring.capacity.public_ground import embedment
    from .checks.inputs import read
    from .checks.timber.nds.public import lateral, withdrawal
    from .design.faults import DesignError, Fault
    from .design.model import Design
    from .loads.public import velocity_pressure
    from .loads.public_how_often import return_period
    from .report.data.catalogue import check_many
    from .report.data.checking import check
    from .report.data.result import Result
    from .report.screens.sizes import Sizes, size
    from .units import Q, UnitError


def __getattr__(name: str) -> object:
    """Fetch a public name from its room, once."""
    if name not in _PLACES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    value = getattr(import_module(f".{_PLACES[name]}", __name__), name)
    globals()[name] = value
    return value


def __dir__() -> list[str]:
    """Return the public names, fetched or not."""
    return sorted({*globals(), *__all__})
