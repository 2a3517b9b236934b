"""How amounts are shown: as the trade writes them, rounded so that nobody is misled upward."""

from fractions import Fraction
from math import ceil, floor
from typing import Literal

from ...units import FOOT, GRAVITY, INCH, KMH, MPH, POUND, POUND_FORCE, PSF
from ...units.frozen import ByValue

LB_FT3 = POUND / FOOT**3
ATMOST = 1.0e-9

_Way = Literal["near", "down", "up"]

_PLAIN = {"N*m": "N m", "l_e/d": "x thick"}
"""Units of checks as they are said where they are the same in both systems."""


class Amounts(ByValue, frozen=True):
    """Amounts in SI to text, in imperial units or metric ones.

    Limits are rounded down and needs up; what is only told is rounded to the nearest.
    """

    metric: bool

    def length(self, metres: float, way: _Way = "near") -> str:
        """Return a length: inches to 1/8, feet above 24 in; mm."""
        if self.metric:
            return f"{_whole(metres * 1000.0, way):,} mm"
        eighths = _whole(abs(metres) / INCH * 8.0, way)
        sign = "-" if metres < 0.0 and eighths else ""
        return sign + _tape(Fraction(eighths, 8))

    def cut(self, metres: float) -> str:
        """Return a length to saw to: inches to 1/16, never in feet; mm."""
        return f"{self.bare_cut(metres)} {'mm' if self.metric else 'in'}"

    def bare_cut(self, metres: float) -> str:
        """Return a length to saw to without its unit."""
        if self.metric:
            return f"{_whole(metres * 1000.0, 'near'):,}"
        return _mixed(Fraction(_whole(metres / INCH * 16.0, "near"), 16))

    def thickness(self, metres: float) -> str:
        """Return the thickness of stock: a fraction to 1/16 in, else thousandths; mm to 1/10."""
        if self.metric:
            return f"{metres * 1000.0:.1f}".removesuffix(".0") + " mm"
        sixteenths = metres / INCH * 16.0
        if abs(sixteenths - round(sixteenths)) < 1.0e-3:
            return f"{_mixed(Fraction(round(sixteenths), 16))} in"
        return f"{metres / INCH:.3f} in"

    def gap(self, metres: float) -> str:
        """Return how far a seam stays open: to 1/64 in or 0.1 mm, or that it is less."""
        if self.metric:
            tenths = metres * 10000.0
            return "under 0.1 mm" if tenths < 1.0 else f"{tenths / 10.0:.1f} mm"
        parts = round(metres / INCH * 64.0)
        return "under 1/64 in" if parts < 1 else f"{_mixed(Fraction(parts, 64))} in"

    def bend(self, metres: float) -> str:
        """Return how far a part bends: about so far, or less than 1/16 in or 1 mm."""
        if metres < 0.5 / 1000.0:
            return "less than 1 mm" if self.metric else "less than 1/16 in"
        said = self.length(metres)
        return f"about {said if said != '0 in' else '1/16 in'}"

    def own_length(self, metres: float) -> str:
        """Return a length as somebody gave it, not rounded: to 1/64 in, else with decimals."""
        tape = _as_given(metres / INCH)
        if self.metric or tape is None:
            return f"{self.bare_own_length(metres)} {'mm' if self.metric else 'in'}"
        return _tape(tape)

    def bare_own_length(self, metres: float) -> str:
        """Return a length as somebody gave it in inches or mm without its unit."""
        if self.metric:
            return f"{metres * 1000.0:,.2f}".rstrip("0").rstrip(".")
        tape = _as_given(metres / INCH)
        return _mixed(tape) if tape is not None else f"{metres / INCH:,.2f}"

    def width_needed(self, metres: float) -> str:
        """Return a foot's width: up to the next 1/2 in, or 10 mm."""
        if self.metric:
            return f"{10 * _whole(metres * 100.0, 'up'):,} mm"
        return _tape(Fraction(_whole(metres / INCH * 2.0, "up"), 2))

    def mass(self, kilograms: float) -> str:
        """Return a weight as a scale shows it: pounds to 1, ounces below one; kg."""
        if self.metric:
            return f"{kilograms:.1f} kg" if kilograms < 10.0 else f"{kilograms:,.0f} kg"
        pounds = kilograms / POUND
        return f"{pounds * 16.0:.0f} oz" if pounds < 0.95 else f"{pounds:,.0f} lb"

    def own_mass(self, kilograms: float) -> str:
        """Return a weight that the builder gave, to what it was given."""
        if self.metric:
            return f"{kilograms:,.4g} kg"
        return f"{kilograms / POUND:,.4g} lb"

    def mass_needed(self, kilograms: float) -> str:
        """Return a weight to lay on: up to the next 5 lb, or kg."""
        if self.metric:
            return f"{_whole(kilograms, 'up'):,} kg"
        return f"{5 * _whole(kilograms / POUND / 5.0, 'up'):,} lb"

    def force(self, newtons: float, way: _Way = "near") -> str:
        """Return a push or pull as a scale shows it: pounds to 1, or kg to 1."""
        unit, whole = "kg" if self.metric else "lb", self.whole_force(newtons, way)
        return f"less than 1 {unit}" if way == "down" and whole < 1 else f"{whole:,} {unit}"

    def about_force(self, newtons: float) -> str:
        """Return a push or pull, down, as about so much: ``about 27 lb``, ``less than 1 lb``."""
        about = "about " if self.whole_force(newtons) else ""
        return f"{about}{self.force(newtons, 'down')}"

    def whole_force(self, newtons: float, way: _Way = "down") -> int:
        """Return a push or pull in whole pounds, or kg."""
        return _whole(newtons / (GRAVITY if self.metric else POUND_FORCE), way)

    def pull(self, newtons: float) -> str:
        """Return what a stake must hold: up to the next 5 lb, or 2 kg."""
        if self.metric:
            return f"{2 * _whole(newtons / GRAVITY / 2.0, 'up'):,} kg"
        return f"{5 * _whole(newtons / POUND_FORCE / 5.0, 'up'):,} lb"

    def gust(self, metres_per_second: float, way: _Way = "down") -> str:
        """Return a wind: mph or km/h, down to 1, with its unit."""
        return f"{self.bare_gust(metres_per_second, way)} {self.speed_unit}"

    def bare_gust(self, metres_per_second: float, way: _Way = "down") -> str:
        """Return a wind in mph or km/h without its unit."""
        return f"{_whole(metres_per_second / (KMH if self.metric else MPH), way):,}"

    def act(self, metres_per_second: float) -> str:
        """Return the gust to act at, down to 5 mph or km/h, with its unit."""
        return f"{self.whole_act(metres_per_second):,} {self.speed_unit}"

    def whole_act(self, metres_per_second: float) -> int:
        """Return the gust to act at, down to 5 mph or km/h, as a number."""
        step = 5.0 * (KMH if self.metric else MPH)
        return 5 * _whole(metres_per_second / step, "down")

    @property
    def speed(self) -> float:
        """Return one mph or km/h in m/s."""
        return KMH if self.metric else MPH

    @property
    def speed_unit(self) -> str:
        """Return the unit of wind."""
        return "km/h" if self.metric else "mph"

    def density(self, kg_per_m3: float) -> str:
        """Return a density: lb/ft3 or kg/m3, to 1."""
        if self.metric:
            return f"{kg_per_m3:,.0f} kg/m3"
        return f"{self.bare_density(kg_per_m3)} lb/ft3"

    def bare_density(self, kg_per_m3: float) -> str:
        """Return a density without its unit."""
        return f"{kg_per_m3 / (1.0 if self.metric else LB_FT3):,.0f}"

    def pressure(self, pascals: float) -> str:
        """Return a pressure on the ground: psf or kPa, two or three figures."""
        if self.metric:
            return (
                f"{pascals / 1000.0:,.3g} kPa" if pascals < 1.0e6 else f"{pascals / 1e6:,.3g} MPa"
            )
        psf = pascals / PSF
        return f"{_figures(psf, 3):,.0f} psf"

    def pressure_per_depth(self, pascals_a_metre: float) -> str:
        """Return a lateral pressure per depth: psf a foot or kPa a metre."""
        if self.metric:
            return f"{pascals_a_metre / 1000.0:.3g} kPa a metre"
        return f"{pascals_a_metre / PSF * FOOT:,.0f} psf a foot"

    def measure(self, value: float, unit: str, decimals: int = 0) -> str:
        """Return a check's demand or capacity in N*m, N, Pa, m or l_e/d, in this system's units."""
        number, name = self._converted(value, unit)
        return f"{number:,.{decimals}f} {name}"

    def _converted(self, value: float, unit: str) -> tuple[float, str]:
        if self.metric:
            if unit == "m":
                return 1000.0 * value, "mm"
            return (value / 1000.0, "kPa") if unit == "Pa" else (value, _PLAIN.get(unit, unit))
        match unit:
            case "N*m":
                return value / POUND_FORCE / FOOT, "lb-ft"
            case "N":
                return value / POUND_FORCE, "lb"
            case "Pa":
                return value / PSF, "psf"
            case "m":
                return value / INCH, "in"
            case _:
                return value, _PLAIN.get(unit, unit)

    def has_and_needs(self, has: float, needs: float, unit: str, passes: bool) -> tuple[str, str]:
        """Return capacity and demand, with as many decimals as show which one is greater."""
        if has <= 0.0:
            return "none", self.measure(needs, unit)
        decimals = self._decimals(has, needs, unit, passes)
        return self.measure(has, unit, decimals), self.measure(needs, unit, decimals)

    def has_of_needs(self, has: float, needs: float, unit: str, passes: bool) -> str:
        """Return capacity and demand with their unit once: ``15 / 13 lb``."""
        if has <= 0.0:
            return f"none / {self.measure(needs, unit)}"
        decimals = self._decimals(has, needs, unit, passes)
        return f"{self._converted(has, unit)[0]:,.{decimals}f} / " + self.measure(
            needs, unit, decimals
        )

    def _decimals(self, has: float, needs: float, unit: str, passes: bool) -> int:
        has_shown, needs_shown = (self._converted(value, unit)[0] for value in (has, needs))
        least = 1 if max(has_shown, needs_shown) < 10.0 else 0
        decimals = least
        for decimals in range(least, 5):
            enough = round(has_shown, decimals) >= round(needs_shown, decimals)
            if enough == passes:
                break
        return decimals


def _whole(value: float, way: _Way) -> int:
    match way:
        case "down":
            return floor(value * (1.0 + ATMOST) + ATMOST)
        case "up":
            return ceil(value * (1.0 - ATMOST) - ATMOST)
        case _:
            return floor(value + 0.5)


def _as_given(inches: float) -> Fraction | None:
    """Return inches to 1/64, None where what was given is not of these."""
    found = Fraction(_whole(inches * 64.0, "near"), 64)
    return found if abs(float(found) - inches) < 1.0e-4 else None


def _figures(value: float, figures: int) -> float:
    return float(f"{value:.{figures}g}")


def _tape(inches: Fraction) -> str:
    """Return inches as a tape shows them, in feet and inches above 24 in."""
    if inches <= 24:
        return f"{_mixed(inches)} in"
    feet, rest = divmod(inches, 12)
    return f"{int(feet):,} ft {_mixed(rest)} in" if rest else f"{int(feet):,} ft"


def _mixed(inches: Fraction) -> str:
    whole, rest = divmod(inches, 1)
    if not rest:
        return f"{int(whole):,}"
    return f"{int(whole):,} {rest}" if whole else f"{rest}"
