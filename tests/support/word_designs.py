"""One design for each word of the verdict, and the reason that it rests on."""

from sample_file import HARBOUR_LIGHT
from verdict_designs import CONCRETE, block, design_text

from yardfast.checks.verdict import Reason, Word

_HEAD = "[[part]]\nname = 'head'\nshape = 'weight'\nmass = '100 lb'\non = 'block'\n"
_WHEEL = (
    "[[part]]\nname = 'vane'\nshape = 'rotor'\non = 'block'\nat = ['0 in', '-4 in', '-1 in']\n"
    "blades = 4\nspan = '13 in'\nroot = '2 in'\ntip = '3 in'\nthickness = '1/4 in'\n"
    "facing = '180 deg'\ndensity = '60 lb/ft^3'\n"
)
_POST = "[[part]]\nname = 'post'\nshape = 'box'\nlumber = '4x4'\nheight = '{height}'\n"
_POST += "embed = '{embed}'\nmaterial = 'southern pine, treated'\n"
_BOARD = (
    "[[part]]\nname = 'board'\nshape = 'panel'\non = 'post'\nwidth = '30 in'\nheight = '20 in'\n"
    "thickness = '3/4 in'\nat = ['0 in', '2 1/8 in', '-20 in']\nmaterial = 'softwood plywood'\n"
)
_STAKES = "[[anchor]]\nname = 'stakes'\nkind = '{kind}'\nwhere = 'second sides'\n"
_LOOSE = (
    "[[part]]\nname = 'cap'\nshape = 'plate'\nlength = '40 in'\nwidth = '40 in'\n"
    "thickness = '1 in'\ndensity = '20 lb/ft^3'\non = 'block'\nloose = true\n"
)

SANDY = design_text(block("12 in", "30 in", "60 in", "30 lb/ft^3"), ground="sand")

TEXTS: dict[tuple[Word, Reason], str] = {
    (Word.FALLS_OVER, Reason.BALANCE): design_text(
        block("12 in", "12 in", "6 in", "20 lb/ft^3") + _HEAD + "at = ['20 in', '0 in', '0 in']\n"
    ),
    (Word.FALLS_OVER, Reason.GROUND_GIVES): design_text(
        block("12 in", "12 in", "90 in", "600 lb/ft^3"), wind="10 mph", ground="soft clay"
    ),
    (Word.FALLS_OVER, Reason.DOWNHILL): design_text(
        block("24 in", "24 in", "6 in", CONCRETE),
        wind="20 mph",
        ground="wet lawn",
        site="slope = '20 deg'",
    ),
    (Word.COMES_APART, Reason.PART_FAILS): design_text(
        block("24 in", "24 in", "12 in", CONCRETE) + _LOOSE
    ),
    (Word.NOTHING_HOLDS, Reason.MOVES): design_text(
        block("40 ft", "2 ft", "30 ft", "1 lb/ft^3"), wind="150 mph"
    ),
    (Word.NOTHING_HOLDS, Reason.HELD_TOO_LITTLE): design_text(
        block("40 ft", "2 ft", "30 ft", "1 lb/ft^3")
        + _STAKES.format(kind="rebar stake 1/2 in x 36 in").replace("second sides", "corners"),
        wind="150 mph",
    ),
    (Word.TIE_IT_DOWN, Reason.MOVES): HARBOUR_LIGHT,
    (Word.TIE_IT_DOWN, Reason.HELD_TOO_LITTLE): HARBOUR_LIGHT
    + _STAKES.format(kind="rebar stake 1/2 in x 18 in"),
    (Word.WEIGH_IT_DOWN, Reason.MOVES): design_text(
        block("6 in", "6 in", "16 in", "20 lb/ft^3") + _WHEEL, wind="35 mph", ground="sand"
    ),
    (Word.WEIGH_IT_DOWN, Reason.HELD_TOO_LITTLE): design_text(
        block("6 in", "6 in", "16 in", "20 lb/ft^3")
        + _WHEEL
        + _STAKES.format(kind="rebar stake 1/2 in x 36 in").replace("second sides", "corners"),
        wind="35 mph",
        ground="sand",
    ),
    (Word.SET_IT_DEEPER, Reason.POSTS_GIVE): design_text(
        _POST.format(height="90 in", embed="12 in") + _BOARD
    ),
    (Word.SINKS_IN, Reason.PRESSES): design_text(
        block("12 in", "12 in", "48 in", "35 lb/ft^3"),
        method="gust",
        wind="40 mph",
        exposure=None,
    ),
    (Word.KEEP_PEOPLE_OFF, Reason.PEOPLE): design_text(
        block("12 in", "12 in", "60 in", "40 lb/ft^3"),
        wind="10 mph",
        site="people = 'public'",
    ),
    (Word.HELD_DOWN, Reason.NOTHING_FAILS): HARBOUR_LIGHT
    + _STAKES.format(kind="steel stake 1 in x 36 in"),
    (Word.STANDS, Reason.NOTHING_FAILS): design_text(
        block("24 in", "24 in", "12 in", CONCRETE), wind="35 mph"
    ),
    (Word.STANDS_BY_POSTS, Reason.NOTHING_FAILS): design_text(
        _POST.format(height="90 in", embed="36 in")
    ),
}
