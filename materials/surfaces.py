"""What a part rests on when it only stands upon another: friction, and nothing that yields."""

from functools import cache

from .. import references
from .grounds import Friction, Ground


@cache
def surface(kind: str) -> Ground:
    """Return the top of a part of a contact kind (wood, steel, concrete, rubber) as a ground.

    It does not give way and takes no stakes. KeyError where there is no such kind.
    """
    rows = references.table("ground/surface_friction").where("on", kind)
    if not rows:
        raise KeyError(f"no friction on {kind!r}")
    return Ground(
        name=f"the {kind} beneath",
        description=f"the top of a part of {kind}",
        field_cue="",
        wet=False,
        ibc_class=None,
        friction={
            row["surface"]: Friction(
                float(row["coefficient"]), row["source"], row["confidence"], row["note"]
            )
            for row in rows
        },
        ratings={},
        stakes_possible=False,
        straight_pull=False,
        stakes_note="",
        note="",
    )
