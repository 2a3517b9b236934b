"""Design texts for tests of what people read: each comes out another way."""

from sample_file import HARBOUR_LIGHT as HARBOUR


def design_text(
    part: str,
    *,
    name: str = "Piece",
    units: str = "imperial",
    method: str = "forecast",
    wind: str = "58 mph",
    exposure: str | None = "open",
    ground: str = "firm lawn",
    site: str = "",
) -> str:
    """Return a design with one site and the given parts."""
    around = f"exposure = '{exposure}'\n" if exposure else ""
    return (
        f"[design]\nname = '{name}'\nunits = '{units}'\n\n[site]\nmethod = '{method}'\n"
        f"wind = '{wind}'\n{around}ground = '{ground}'\n{site}\n{part}"
    )


def block(length: str, width: str, height: str, density: str, more: str = "") -> str:
    """Return a solid box as a part."""
    return (
        f"[[part]]\nname = 'block'\nshape = 'box'\nlength = '{length}'\nwidth = '{width}'\n"
        f"height = '{height}'\ndensity = '{density}'\n{more}\n"
    )


CONCRETE = "150 lb/ft^3"
STANDS = design_text(block("24 in", "24 in", "12 in", CONCRETE), wind="35 mph")
SOLID_AS_ROCK = design_text(block("90 ft", "90 ft", "1 in", "600 lb/ft^3"), ground="paving")
METRIC = design_text(
    block("300 mm", "900 mm", "1200 mm", "500 kg/m^3"), units="metric", wind="26 m/s"
)
PUSHED = design_text(
    block("12 in", "12 in", "60 in", "40 lb/ft^3"),
    wind="10 mph",
    site="people = 'public'",
)
SINKS = design_text(
    block("12 in", "12 in", "90 in", "600 lb/ft^3"), wind="10 mph", ground="soft clay"
)
SLIDES_DOWN = design_text(
    block("24 in", "24 in", "6 in", CONCRETE),
    wind="20 mph",
    ground="wet lawn",
    site="slope = '20 deg'",
)
FALLS = design_text(
    block("12 in", "12 in", "6 in", "20 lb/ft^3")
    + "[[part]]\nname = 'head'\nshape = 'weight'\nmass = '100 lb'\non = 'block'\n"
    "at = ['20 in', '0 in', '0 in']\n"
)
PAVED = design_text(block("12 in", "30 in", "60 in", "30 lb/ft^3"), ground="paving")
SANDY = design_text(block("12 in", "30 in", "60 in", "30 lb/ft^3"), ground="sand")
CODE = design_text(
    block("12 in", "12 in", "48 in", "35 lb/ft^3"), method="ASCE 7-22", wind="105 mph"
)
CODE_NAMED = design_text(
    block("12 in", "12 in", "48 in", "35 lb/ft^3"),
    method="ASCE 7-16",
    wind="115 mph",
    exposure="houses and trees",
    site="wind_source = 'Harbour County, ordinance 12'\nreturn_period = 700",
)
HOPELESS = design_text(
    "[[part]]\nname = 'board'\nshape = 'panel'\nwidth = '40 ft'\nheight = '30 ft'\n"
    "thickness = '2 in'\nmaterial = 'softwood plywood'\n",
    wind="150 mph",
)
CODE_STANDS = design_text(
    block("60 in", "60 in", "12 in", CONCRETE), method="ASCE 7-22", wind="105 mph", ground="paving"
)
LEAST_WIND = design_text(
    block("12 in", "12 in", "48 in", "35 lb/ft^3"),
    method="ASCE 7-22",
    wind="40 mph",
    site="wind_kind = 'ultimate'",
)
AT_PIECE = design_text(
    block("12 in", "12 in", "48 in", "35 lb/ft^3"), method="gust", wind="40 mph", exposure=None
)
LATTICE = design_text(
    "[[part]]\nname = 'sill'\nshape = 'box'\nlength = '48 in'\nwidth = '24 in'\nheight = '2 in'\n"
    "material = 'white oak'\n"
    "[[part]]\nname = 'trellis'\nshape = 'panel'\non = 'sill'\nwidth = '48 in'\nheight = '60 in'\n"
    "thickness = '1/2 in'\nsolidity = 0.4\nmaterial = 'western redcedar'\n"
)
WHEEL = design_text(
    block("12 in", "12 in", "48 in", "35 lb/ft^3")
    + "[[part]]\nname = 'vane'\nshape = 'rotor'\non = 'block'\nat = ['0 in', '-8 in', '-4 in']\n"
    "blades = 6\nspan = '14 in'\nroot = '2 in'\ntip = '5 in'\nthickness = '1/8 in'\n"
    "facing = '180 deg'\nmaterial = 'aluminium'\n"
)
HEXAGON = design_text(
    "[[part]]\nname = 'post'\nshape = 'solid'\nsides = 6\nbottom = '12 in'\ntop = '12 in'\n"
    "height = '48 in'\ndensity = '600 kg/m^3'\n",
    method="gust",
    wind="22 m/s",
    exposure=None,
)
ROUND = design_text(
    "[[part]]\nname = 'pillar'\nshape = 'solid'\nsides = 0\nbottom = '200 mm'\ntop = '200 mm'\n"
    "height = '1400 mm'\nmass = '104 kg'\n",
    units="metric",
    wind="30 m/s",
)
WEIGHED = HARBOUR.replace("units = 'imperial'", "units = 'imperial'\nweighed = '44 lb'")
LONG_NAME = design_text(
    block("12 in", "12 in", "48 in", "35 lb/ft^3"), name="A very " * 25 + "long"
)

ALL = {
    name: text
    for name, text in dict(globals()).items()
    if name.isupper() and name not in ("ALL", "CONCRETE") and isinstance(text, str)
}
