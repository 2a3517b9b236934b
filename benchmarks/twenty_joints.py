"""What one fastener holds by each book of timber, of the same twenty joints: EN 1995-1-1 over NDS.

Outdoors, under wind, on the strength level of each book's own loads (the factors of ASCE 7 and of
EN 1990 differ: what a person may do with either stands in ``yardfast compare``).

    python benchmarks/twenty_joints.py
"""

from yardfast.checks.timber.books import BOOKS
from yardfast.checks.timber.terms.driven import Driven
from yardfast.checks.timber.terms.joint_material import joint_material_of
from yardfast.materials import fasteners
from yardfast.units import INCH

PINE, SPF, CEDAR, PLY = "southern pine", "spruce-pine-fir", "western redcedar", "softwood plywood"
BASES = {"NDS": "strength", "EN 1995": "EN 1995, strength"}

JOINTS = (
    ("6d common nail", SPF, 0.75, SPF),
    ("8d common nail", PINE, 0.75, PINE),
    ("10d common nail", SPF, 1.5, SPF),
    ("16d common nail", PINE, 1.5, PINE),
    ("8d ring-shank nail", PLY, 0.469, SPF),
    ("nail 3.1 mm x 80 mm", SPF, 1.5, SPF),
    ("#8 wood screw 2 in", CEDAR, 0.75, CEDAR),
    ("#8 wood screw 2 1/2 in", PINE, 1.0, PINE),
    ("#10 wood screw 3 in", SPF, 1.5, SPF),
    ("#8 deck screw 2 1/2 in", CEDAR, 1.0, PINE),
    ("#8 wood screw 2 in", PLY, 0.703, PINE),
    ("5 x 60 mm wood screw", SPF, 0.75, SPF),
    ("16 ga staple 2 in", PLY, 0.469, SPF),
    ("1/4 lag screw 3 in", SPF, 1.5, SPF),
    ("3/8 lag screw 4 in", PINE, 1.5, PINE),
    ("M10 lag screw 100 mm", PINE, 1.5, PINE),
    ("3/8 bolt 4 in", SPF, 1.5, SPF),
    ("1/2 bolt 6 in", PINE, 1.5, PINE),
    ("M10 bolt 100 mm", SPF, 1.5, SPF),
    ("M12 bolt 150 mm", PINE, 3.5, PINE),
)


def show() -> None:
    """Print a line for each joint: pull and push in N by either book, and one over the other."""
    head = f"{'fastener':<24}{'through':<26}"
    print(head + "".join(f"{way + ' NDS':>10}{'EN':>7}{'over':>7}" for way in ("pull", "side")))
    for name, side, inches, main in JOINTS:
        fastener = fasteners.find_fastener(name)
        through = inches * INCH
        length = fastener.length or 0.0
        room = length - through - 0.5 * INCH if fastener.kind == "bolt" else 3.5 * INCH
        washer = 1.5 * INCH if fastener.kind == "bolt" else None
        woods = joint_material_of(side), joint_material_of(main)
        driven = Driven(*woods, through, room, "side grain", washer=washer)
        nds, en = (
            opened().capacity(fastener, driven, BASES[book]) for book, opened in BOOKS.items()
        )
        pull = en.pull / nds.pull if nds.pull else float("nan")
        push = en.sideways / nds.sideways if nds.sideways else float("nan")
        print(
            f"{name:<24}{f'{inches:g} in {side}':<26}{nds.pull:10.0f}{en.pull:7.0f}{pull:7.2f}"
            f"{nds.sideways:10.0f}{en.sideways:7.0f}{push:7.2f}"
        )


if __name__ == "__main__":
    show()
