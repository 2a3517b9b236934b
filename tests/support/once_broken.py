"""Designs of which some command once fell over, each with what it takes to answer it clearly."""

HEAD = """\
[design]
name = 'Once broken'
units = 'metric'
[site]
method = 'forecast'
wind = '100 km/h'
exposure = 'open'
ground = 'firm lawn'
"""
FOOT = """\
[[part]]
name = 'foot'
shape = 'frame'
length = '800 mm'
breadth = '800 mm'
lumber = '2x4 flat'
material = 'southern pine, treated'
"""
POST = """\
[[part]]
name = 'post'
shape = 'solid'
sides = 4
bottom = '90 mm'
top = '90 mm'
height = '1500 mm'
embed = '600 mm'
material = 'southern pine, treated'
"""
INLAY = """\
[[part]]
name = 'inlay'
shape = 'plate'
on = 'foot'
length = '300 mm'
width = '300 mm'
thickness = '18 mm'
material = 'softwood plywood'
"""
ASCE = HEAD.replace("'forecast'", "'ASCE 7-22'").replace("100 km/h", "105 mph")


def _on_paving(keys: str) -> str:
    return HEAD.replace("firm lawn", "paving") + f"[[part]]\nname = 'piece'\n{keys}\n"


def dumbbell(name: str, away: int) -> str:
    """Return a cut-out of two fields of 200 mm with a neck of 10 mm between them, on ``foot``."""
    right = ((0, 0), (100, 0), (100, 200), (5, 200), (5, 400), (100, 400), (100, 600), (0, 600))
    left = [(-x, y) for x, y in right[-2:0:-1]]
    points = ", ".join(f"['{x} mm', '{y} mm']" for x, y in (*right[1:-1], *left))
    return (
        f"[[part]]\nname = '{name}'\nshape = 'cutout'\non = 'foot'\n"
        f"at = ['0 mm', '{away} mm', '0 mm']\npoints = [{points}]\nthickness = '18 mm'\n"
        "material = 'softwood plywood'\n"
    )


DUMBBELLS = f"""\
{HEAD}{FOOT.replace("frame", "plate").replace("breadth", "width").replace("lumber", "stock")}
{dumbbell("one", 0)}{dumbbell("two", 18)}[[joint]]
name = 'two to one'
of = 'two'
to = 'one'
fastener = '#8 wood screw 1 1/4 in'
count = 6
predrilled = true
""".replace("stock = '2x4 flat'", "thickness = '38 mm'")
"""Two cut-outs back to back: what they have in common falls apart where its edges are moved in."""

ON_A_LINE = f"""\
{HEAD}[[part]]
name = 'hip'
shape = 'box'
length = '600 mm'
width = '400 mm'
height = '300 mm'
top_length = '600 mm'
top_width = '0 mm'
material = 'southern pine'
[[part]]
name = 'cap'
shape = 'box'
on = 'hip'
length = '200 mm'
width = '200 mm'
height = '200 mm'
loose = true
material = 'southern pine'
"""
"""A loose cap on a ridge: what it rests on is a line."""


def staked(more: str, wind: str = "100 km/h") -> str:
    """Return a plate on a lawn with a stake, or stakes, that ``more`` tells of."""
    return HEAD.replace("100 km/h", wind) + (
        "[[part]]\nname = 'foot'\nshape = 'plate'\nlength = '800 mm'\nwidth = '800 mm'\n"
        "thickness = '38 mm'\nmaterial = 'southern pine, treated'\n"
        "[[part]]\nname = 'sign'\nshape = 'panel'\non = 'foot'\nat = ['200 mm', '0 mm', '0 mm']\n"
        "width = '300 mm'\nheight = '900 mm'\nthickness = '18 mm'\n"
        "material = 'softwood plywood'\n[[anchor]]\nname = 'stakes'\n"
        f"kind = 'rebar stake 1/2 in x 24 in'\n{more}"
    )


EXTREME_STAKES = {
    "one amid": staked("at = ['0 mm', '0 mm', '0 mm']\n"),
    "eight in a point": staked("ring = '0.01 mm'\ncount = 8\n"),
    "hardly pulled": staked("where = 'corners'\ninset = '50 mm'\npull_test = '0.001 N'\n"),
    "pulled by a ship": staked("where = 'corners'\ninset = '50 mm'\npull_test = '400 kN'\n"),
    "in no wind": staked("where = 'corners'\ninset = '50 mm'\n", "0.001 km/h"),
    "in every wind": staked("where = 'corners'\ninset = '50 mm'\n", "480 km/h"),
    "down a hill": staked("where = 'corners'\ninset = '50 mm'\n").replace(
        "[site]\n", "[site]\nslope = '29 deg'\n"
    ),
}


def in_the_ground(thickness: str, deep: str) -> str:
    """Return a figure of steel that stands in the ground, thin as a sheet or thinner."""
    return HEAD + (
        "[[part]]\nname = 'figure'\nshape = 'cutout'\nmaterial = 'steel'\n"
        "points = [['-150 mm', '0 mm'], ['150 mm', '0 mm'], ['300 mm', '900 mm'], "
        f"['-300 mm', '900 mm']]\nthickness = '{thickness}'\nembed = '{deep}'\n"
    )


ANSWERED = {
    "a foot on paving too narrow for a bolt through it": _on_paving(
        "shape = 'solid'\nsides = 4\nbottom = '70 mm'\ntop = '70 mm'\nheight = '1200 mm'\n"
        "material = 'southern pine'"
    ),
    "a loose cap on a post in the ground": f"{HEAD}{POST}[[part]]\nname = 'cap'\nshape = 'box'\n"
    "on = 'post'\nlength = '200 mm'\nwidth = '200 mm'\nheight = '100 mm'\nloose = true\n"
    "material = 'southern pine'\n",
    "ballast below the ground beside a post": f"{ASCE}{POST}[[ballast]]\nname = 'stones'\n"
    "on = 'post'\nat = ['0 mm', '0 mm', '-1700 mm']\nmass = '20 kg'\ncount = 2\n",
    "two anchors in one point": HEAD
    + INLAY.replace("on = 'foot'\n", "").replace("'300 mm'", "'800 mm'")
    + "".join(
        f"[[anchor]]\nname = '{name}'\nkind = 'rebar stake 1/2 in x 24 in'\n"
        "at = ['300 mm', '0 mm', '0 mm']\n"
        for name in ("one", "other")
    ),
    "a slab that neither tips nor slides": _on_paving(
        "shape = 'plate'\nlength = '3 m'\nwidth = '3 m'\nthickness = '300 mm'\n"
        "material = 'concrete'"
    ),
}
"""Designs with an answer, by what is special about them."""

REFUSED = {
    "a figure let in by a hair": (in_the_ground("18 mm", "0.01 mm"), "figure", "from 1 in (25 mm)"),
    "a weight below the ground that stands on it": (
        f"{ASCE}{FOOT}[[part]]\nname = 'stones'\nshape = 'weight'\n"
        "at = ['0 mm', '0 mm', '-500 mm']\nmass = '20 kg'\n",
        "stones",
        "nothing lower than the ground",
    ),
    "a post mirrored onto itself": (
        HEAD + POST.replace("embed", "mirror = ['x']\nembed"),
        "post",
        "a mirror that moves it",
    ),
    "two of four mirrored onto the other two": (
        HEAD + POST.replace("embed", "count = 4\nring = '1 m'\nmirror = ['x']\nembed"),
        "post",
        "a mirror that moves it",
    ),
}
"""Designs with one fault: the part that has it, and what is expected of it."""
