"""Posts, arms, braces and legs of 4x4 without joints: held fast where they meet."""

from designs import design

from yardfast.checks.examination import examine
from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.member import Member as Stick
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.shapes.weight import Weight

G = 9.80665
PSI = 6894.757293168
FOUR = 3.5 * 0.0254
BASE = Part("foot", Plate(Rectangle(4.0, 1.5), 0.05), material="concrete")
FB, FC, EMIN = 650.0 * PSI, 850.0 * PSI, 0.47e6 * PSI
"""Southern pine, stud, 2x4 and 4x4. NDS Supplement 2018 Table 4B (memory)."""


def post(at, name="post", height=1.2, **more):
    given_ = {"material": "southern pine", **more}
    return Part(name, Box(FOUR, FOUR, height), Place(on="foot", at=(at, 0.0, 0.0)), **given_)


def stick(name, start, end, on, mass=6.0, width=FOUR, depth=FOUR, **more):
    given_ = {"material": "southern pine", "mass": mass, **more}
    shape = Stick(start, end, width, depth, cut=given_.pop("cut", "square"))
    return Part(name, shape, given_.pop("place", Place(on=on)), **given_)


def weight(name, x, on, mass=10.0):
    return Part(name, Weight(), Place(on=on, at=(x, 0.0, 0.0)), mass=mass)


def judged(*parts, turn=0.0, wind=0.5, **site):
    found = examine(design(*parts, turn=turn, wind=wind, **site)).members
    return {one.name: one for one in found.judged}, {one.name: one.why for one in found.not_judged}


def arm(reach=0.8, **more):
    """Return an arm over a post at x = 0, from -0.2 m to ``reach``."""
    return stick(
        "arm",
        (-0.2, 0.0, FOUR / 2.0),
        (reach, 0.0, FOUR / 2.0),
        "post",
        place=Place(on="post", at=(0.0, 0.0, 0.0)),
        **more,
    )


def frame(mass=60.0):
    legs = stick(
        "legs",
        (0.8, 0.6, 0.0),
        (0.8, 0.05, 1.6),
        None,
        mass=1.0e-6,
        cut="level",
        place=Place(on="foot", mirror=frozenset("xy")),
    )
    beam = stick(
        "beam",
        (-1.0, 0, 0),
        (1.0, 0, 0),
        "legs",
        mass=mass,
        place=Place(on="legs", at=(0, 0, FOUR / 2.0)),
    )
    return legs, beam


def propped(**more):
    brace = stick(
        "brace",
        (FOUR / 2.0, 0.0, 0.84),
        (FOUR / 2.0 + 0.4, 0.0, 1.24),
        None,
        mass=1.0e-6,
        width=FOUR,
        depth=0.04,
        place=Place(),
        cut="plumb",
        **more,
    )
    return BASE, post(0.0), arm(mass=1.0e-6), weight("lamp", 0.4, "arm", mass=80.0), brace
