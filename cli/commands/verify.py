"""``yardfast verify``: every published answer that ships, worked out again beside its print."""

from argparse import Namespace

from ...checks.verification.recomputed import recomputed
from ...report.screens import verification
from .. import screen


def run(arguments: Namespace) -> int:
    """Work out every published answer again; return 0, or 1 where one does not agree."""
    rows = recomputed()
    if arguments.format == "json":
        screen.show_json(verification.verification_objects(rows))
    else:
        screen.show(verification.verification_lines(rows))
    return 0 if all(row.passes for row in rows) else 1
