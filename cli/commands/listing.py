"""``yardfast materials`` and ``yardfast grounds``: the tables of names, with sources."""

from argparse import Namespace

from ...report.screens import listings
from .. import screen


def materials(arguments: Namespace) -> int:
    """List every material."""
    if arguments.format == "json":
        screen.show_json(listings.material_objects())
    else:
        screen.show(listings.material_lines())
    return 0


def grounds(arguments: Namespace) -> int:
    """List every ground."""
    if arguments.format == "json":
        screen.show_json(listings.ground_objects())
    else:
        screen.show(listings.ground_lines())
    return 0
