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
