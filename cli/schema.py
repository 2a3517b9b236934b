"""``yardfast schema``: what a design file may hold, or what a result holds, as a JSON Schema."""

from argparse import Namespace

from . import screen


def run(arguments: Namespace) -> int:
    """Print the schema that is asked for."""
    if arguments.of == "result":
        from ..report.result_schema import result_schema  # noqa: PLC0415 - one of the two

        screen.show_json(result_schema())
    else:
        from ..report.design_schema import design_schema  # noqa: PLC0415

        screen.show_json(design_schema())
    return 0
