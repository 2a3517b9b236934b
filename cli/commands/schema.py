"""``yardfast schema``: a design file, a result or the odds, as a JSON Schema."""

from argparse import Namespace
from collections.abc import Callable, Mapping
from typing import Any

from .. import screen


def run(arguments: Namespace) -> int:
    """Print the schema that is asked for."""
    screen.show_json(_SCHEMAS[arguments.of]())
    return 0


def _design() -> dict[str, Any]:
    from ...report.data.design_schema import design_schema  # noqa: PLC0415 - one of the three

    return design_schema()


def _result() -> dict[str, Any]:
    from ...report.data.result_schema import result_schema  # noqa: PLC0415

    return result_schema()


def _odds() -> dict[str, Any]:
    from ...report.data.odds_record import odds_schema  # noqa: PLC0415

    return odds_schema()


_SCHEMAS: Mapping[str, Callable[[], dict[str, Any]]] = {
    "design": _design,
    "result": _result,
    "odds": _odds,
}
