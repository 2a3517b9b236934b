"""What no yard piece exceeds: sizes beyond these are slips of the pen, named as such."""

from math import pi

from ..units import FOOT, MPH, POUND, POUND_FORCE
from ..units.frozen import ByValue, replace


class Bounds(ByValue, frozen=True):
    """Limits of a value in SI units, and the words that name them.

    ``above`` leaves the lower limit itself out; ``also`` is one value that is accepted besides.
    """

    least: float
    most: float
    words: str
    above: bool = False
    also: float | None = None
    hint: str = ""

    @property
    def signed(self) -> bool:
        """Return whether values below 0 are accepted."""
        return self.least < 0.0

    def hold(self, value: float) -> bool:
        """Return whether the value lies within; the upper limit has room for rounding."""
        low = value > self.least if self.above else value >= self.least
        return value == self.also or (low and value <= self.most * (1.0 + 1.0e-9))


SIZE = Bounds(1.0e-5, 100.0 * FOOT, "more than 0 (0.01 mm) and at most 100 ft (30.48 m)")
SHELL_TOP = replace(SIZE, hint="shape = 'cone', if it ends in a point")
SIZE_OR_ZERO = Bounds(0.0, 100.0 * FOOT, "from 0 to 100 ft (30.48 m)")
OFFSET = Bounds(-100.0 * FOOT, 100.0 * FOOT, "at most 100 ft (30.48 m) either way")
WIND = Bounds(0.0, 300.0 * MPH, "more than 0 and at most 300 mph (134 m/s)", above=True)
_SLOPE = Bounds(0.0, pi / 6.0, "from 0 to 30 degrees")
DENSITY = Bounds(
    1.0, 23000.0, "from 1 to 23,000 kg/m3 (0.06 to 1,436 lb/ft3)", hint="water is 62.4 lb/ft^3"
)
MASS = Bounds(1.0e-6, 1.0e5 * POUND, "more than 0 (1 mg) and at most 100,000 lb (45,360 kg)")
ANGLE = Bounds(-2.0 * pi, 2.0 * pi, "from -360 to 360 degrees")
TILT = Bounds(-pi / 2.0, pi / 2.0, "from -90 to 90 degrees")
FORCE = Bounds(0.0, 1.0e5 * POUND_FORCE, "more than 0 and at most 100,000 lbf (445 kN)", above=True)
_COVERING = Bounds(
    0.0,
    100.0 * POUND / FOOT**2,
    "more than 0 and at most 100 lb/ft2 (488 kg/m2)",
    above=True,
)
ELEVATION = Bounds(-2000.0 * FOOT, 30000.0 * FOOT, "from -2,000 to 30,000 ft above the sea")
SIDES = Bounds(3, 60, "0 (round) or 3 to 60", also=0)
COUNT = Bounds(1, 500, "from 1 to 500")
BLADE_COUNT = Bounds(1, 200, "from 1 to 200", hint="a plate, if it is as good as closed")
RATIO = Bounds(0.0, 1.0, "more than 0 and at most 1", above=True)
SAFETY = Bounds(1.0, 5.0, "from 1 to 5")
ANNEX = Bounds(0.0, 2.0, "more than 0 and at most 2", above=True, hint="1 as recommended")
AIR = Bounds(0.9, 1.4, "from 0.9 to 1.4 kg/m3", hint="1.25 kg/m^3 as recommended")
OROGRAPHY = Bounds(1.0, 3.0, "from 1 to 3", hint="1 on level ground; more on a crest")
TOPOGRAPHIC = Bounds(1.0, 10.0, "from 1 to 10", hint="1 on level ground; more on a crest")
FILE_FORMAT = Bounds(1, 1, "1, the only format so far")
YEARS = Bounds(1.0, 1.0e5, "from 1 to 100,000 years")

MOST_PARTS = 500
MOST_CORNERS = 2000
MOST_BYTES = 1_000_000

DEFAULT_BOUNDS = {
    "length": SIZE,
    "speed": WIND,
    "slope": _SLOPE,
    "density": DENSITY,
    "mass": MASS,
    "angle": ANGLE,
    "ratio": RATIO,
    "force": FORCE,
    "area density": _COVERING,
    "offset": OFFSET,
    "outline": OFFSET,
    "outlines": OFFSET,
    "count": COUNT,
}
