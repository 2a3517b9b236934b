"""Text and quantities to SI. Factors: NIST SP 811 (2008) app. B, where they are exact."""

import math
import pickle
import re
import subprocess
import sys
from fractions import Fraction
from pathlib import Path

import numpy as np
import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast import units
from yardfast.units import UnitError, kinds, known, read_dimension, to_si

INCH = 0.0254
FOOT = 0.3048
POUND = 0.45359237
POUND_FORCE = 0.45359237 * 9.80665
NIST_SP_811 = [
    ("1 in", "length", 0.0254),
    ("1 ft", "length", 0.3048),
    ("1 yd", "length", 0.9144),
    ("1 mi", "length", 1609.344),
    ("1 mm", "length", 0.001),
    ("1 cm", "length", 0.01),
    ("1 m", "length", 1.0),
    ("1 km", "length", 1000.0),
    ("1 mph", "speed", 0.44704),
    ("1 kt", "speed", 1852 / 3600),
    ("1 m/s", "speed", 1.0),
    ("1 km/h", "speed", 1 / 3.6),
    ("1 ft/s", "speed", 0.3048),
    ("1 lb", "mass", 0.45359237),
    ("1 oz", "mass", 0.028349523125),
    ("1 kg", "mass", 1.0),
    ("1 g", "mass", 0.001),
    ("1 lbf", "force", 4.4482216152605),
    ("1 kip", "force", 4448.2216152605),
    ("1 N", "force", 1.0),
    ("1 kN", "force", 1000.0),
    ("1 Pa", "pressure", 1.0),
    ("1 kPa", "pressure", 1000.0),
    ("1 kg/m^3", "density", 1.0),
    ("1 kg/m^2", "area density", 1.0),
    ("1 N/m", "line load", 1.0),
    ("1 rad", "angle", 1.0),
    ("180 deg", "angle", math.pi),
]
# printed to seven digits: half a unit in the last one
NIST_SP_811_ROUNDED = [
    ("1 psf", "pressure", 4.788026e1, 0.5e-5),
    ("1 psi", "pressure", 6.894757e3, 0.5e-3),
    ("1 lb/ft^3", "density", 1.601846e1, 0.5e-5),
    ("1 lb/ft^2", "area density", 4.882428, 0.5e-6),
    ("1 plf", "line load", 1.459390e1, 0.5e-5),
    ("1 deg", "angle", 1.745329e-2, 0.5e-8),
]


@pytest.mark.parametrize(("text", "kind", "exact"), NIST_SP_811, ids=lambda v: f"NIST SP 811 {v}")
def test_exact_definitions(text: str, kind: str, exact: float) -> None:
    assert read_dimension(text, kind).value == pytest.approx(exact, rel=4e-16)


@pytest.mark.parametrize(("text", "kind", "printed", "half"), NIST_SP_811_ROUNDED)
def test_printed_factors(text: str, kind: str, printed: float, half: float) -> None:
    assert read_dimension(text, kind).value == pytest.approx(printed, abs=half, rel=0)


def test_lateral_bearing_is_a_pressure_per_depth() -> None:
    # IBC 2012 Table 1806.2 class 4: 150 psf/ft, the same row 23.6 kPa/m
    for text in ("150 lbf/ft^3", "150 psf/ft", "150 lbf/ft3"):
        assert read_dimension(text, "lateral bearing").value == pytest.approx(23.6e3, abs=50)


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("36 in", 36),
        ("4 ft 6 in", 54),
        ("1 1/2 in", 1.5),
        ("1-1/2 in", 1.5),
        ("5 7/8 in", 5.875),
        ('3/4"', 0.75),
        ("5''", 5),
        ('36"', 36),
        ("6'", 72),
        ("5'-6 1/2\"", 66.5),
        ("5' 6\"", 66),
        ("5'6\"", 66),
        ("5' - 6\"", 66),
        ("5 ft. 6 in.", 66),
        ("4ft6in", 54),
        ("½ in", 0.5),
        ("1½ in", 1.5),
        ("1 ½ in", 1.5),
        ("2¾″", 2.75),
        ("7⅛ in", 7.125),
        ("⅜”", 0.375),
        ("1⁄2 in", 0.5),
        ("5′ 6½″", 66.5),
        ("5’–6”", 66),
        ("5’ 6’’", 66),
        ("1–1/2 in", 1.5),
        ("36\N{NO-BREAK SPACE}in", 36),
        ("36\N{NARROW NO-BREAK SPACE}in", 36),
        ("\N{LEFT-TO-RIGHT MARK}36 in\N{ZERO WIDTH SPACE}", 36),
        ("  36   in ", 36),
        ("16.5 in", 16.5),
        (".5 in", 0.5),
        ("36 inches", 36),
        ("36 IN", 36),
        ("3 feet", 36),
        ("1 foot", 12),
        ("1 yd 2 ft 3 in", 63),
        ("1 yd 3 in", 39),
        ("910 mm", 910 / 25.4),
        ("1 m 20 cm 5 mm", 1205 / 25.4),
    ],
)
def test_lengths_as_people_write_them(text: str, inches: float) -> None:
    reading = read_dimension(text, "length")
    assert reading.value == pytest.approx(inches * INCH, rel=1e-14)
    assert reading.note is None


@pytest.mark.parametrize(
    ("text", "inches", "note"),
    [
        ("5 ft 6", 66, "5 ft 6 was read as 5 ft 6 in"),
        ("5'6", 66, "5'6 was read as 5 ft 6 in"),
        ("5' 6 1/2", 66.5, "5' 6 1/2 was read as 5 ft 6 1/2 in"),
    ],
)
def test_inches_understood_after_feet_are_repeated_back(
    text: str, inches: float, note: str
) -> None:
    reading = read_dimension(text, "length")
    assert reading.value == pytest.approx(inches * INCH, rel=1e-14)
    assert reading.note == note


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [
        ("58 MPH", "speed", 58 * 0.44704),
        ("50 knots", "speed", 50 * 1852 / 3600),
        ("90 kph", "speed", 25.0),
        ("12 mps", "speed", 12.0),
        ("2 lb 4 oz", "mass", 2.25 * POUND),
        ("40 lbs", "mass", 40 * POUND),
        ("36 pounds", "mass", 36 * POUND),
        ("40 lbs.", "mass", 40 * POUND),
        ("35 pcf", "density", 35 * POUND / FOOT**3),
        ("35 lb/ft3", "density", 35 * POUND / FOOT**3),
        ("35 lb / ft³", "density", 35 * POUND / FOOT**3),
        ("600 kg/m**3", "density", 600.0),
        ("20 psf", "pressure", 20 * POUND_FORCE / FOOT**2),
        ("20 lbf/ft^2", "pressure", 20 * POUND_FORCE / FOOT**2),
        ("30 lbf/ft", "line load", 30 * POUND_FORCE / FOOT),
        ("5°", "angle", math.radians(5)),
        ("5 degrees", "slope", math.radians(5)),
        ("9 %", "slope", math.atan(0.09)),
        ("9%", "slope", math.atan(0.09)),
        ("100 %", "slope", math.radians(45)),
        ("0.1 rad", "slope", 0.1),
    ],
)
def test_other_kinds_as_people_write_them(text: str, kind: str, value: float) -> None:
    assert read_dimension(text, kind).value == pytest.approx(value, rel=1e-14)


@pytest.mark.parametrize("minus", ["-", "−", "–", "- "])
def test_negative_only_where_the_caller_says_so(minus: str) -> None:
    assert read_dimension(f"{minus}4 ft 6 in", "length", signed=True).value == pytest.approx(
        -54 * INCH
    )
    with pytest.raises(UnitError, match="cannot be negative"):
        read_dimension(f"{minus}4 ft 6 in", "length")


@pytest.mark.parametrize(
    ("text", "si"),
    [
        # A comma before one, two, four or more figures, or behind a lone 0, parts decimals (SI
        # Brochure, 9th edition, 5.4.4); before three it may part thousands.
        ("1,5 m", 1.5),
        ("0,125 m", 0.125),
        ("910,5 mm", 0.9105),
        ("1.200,5 mm", 1.2005),
        ("1,200.5 mm", 1.2005),
        ("1,200,000 mm", 1200.0),
        ("12,25 in", 12.25 * INCH),
    ],
)
def test_a_comma_of_one_reading_is_read(text, si):
    assert read_dimension(text, "length").value == pytest.approx(si, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "kind", "si"),
    [
        ("60mph", "speed", 60 * 1609.344 / 3600),
        ("60 m.p.h.", "speed", 60 * 1609.344 / 3600),
        ("60 miles per hour", "speed", 60 * 1609.344 / 3600),
        ("5'6\"", "length", 66 * INCH),
        ("3/4-inch", "length", 0.75 * INCH),
        ("6-foot", "length", 6 * FOOT),
        ("5 foot 6", "length", 66 * INCH),
        ("12 lbs.", "mass", 12 * POUND),
    ],
)
def test_what_people_write_is_read(text, kind, si):
    assert read_dimension(text, kind).value == pytest.approx(si, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1,200 mm", ["'1200 mm'", "'1.200 mm'"]),
        ("10,500 mm", ["'10500 mm'", "'10.500 mm'"]),
        ("36", ["'36 in'"]),
        ("1 1/2", ["'1 1/2 in'"]),
        ("", ["in"]),
        ("-", ["in"]),
        ("6 in 4 ft", ["descend"]),
        ("5'' 6'", ["descend"]),
        ("1 ft 200 mm", ["descend"]),
        ("5 ft 2 ft", ["descend"]),
        ("4 1/2 ft 6 in", ["only the last"]),
        ("5 ft 14", ["no unit"]),
        ("2 m 30", ["no unit"]),
        ("1 3/2 in", ["fraction"]),
        ("1/0 in", ["0 below"]),
        ("36 in tall", ["'tall'"]),
        ("about 36 in", ["about"]),
        ("1 200 mm", ["200 mm"]),
        ("12.5.5 in", [".5 in"]),
        ("3/4/5 in", ["/5 in"]),
        ("5'''", ['"\'"']),
        ("--5 in", ["-5 in"]),
        ("4 ft.5 in", [".5 in"]),
        ("36 inchs", ["'inches'"]),
        ("36 xx", ["'xx'"]),
        ("1e3 mm", ["'e'"]),
        ("٣ in", ["could not read"]),
        ("inf in", ["could not read"]),
        ("nan in", ["could not read"]),
        ("9" * 400 + " in", ["too long"]),
        ("36 \x07in", ["could not read"]),
    ],
)
def test_what_cannot_be_read_whole_is_refused_with_the_way_out(text: str, said: list[str]) -> None:
    with pytest.raises(UnitError) as refusal:
        read_dimension(text, "length")
    for words in said:
        assert words in refusal.value.hint
    assert "a length" in refusal.value.expected
    assert len(refusal.value.found) <= 60


@pytest.mark.parametrize(
    ("value", "found"),
    [(36, "36"), (1.5, "1.5"), (True, "true"), ([1], "list"), ({}, "dict"), (None, "NoneType")],
)
def test_what_is_no_text_is_refused_with_the_fix(value: object, found: str) -> None:
    with pytest.raises(UnitError) as refusal:
        read_dimension(value, "length")
    assert refusal.value.found == found
    assert "in'" in refusal.value.hint


@pytest.mark.parametrize(
    ("text", "kind", "said"),
    [
        ("36 mph", "length", ["a speed", "a length"]),
        ("40 lb", "force", ["a mass", "a force", "'40 lbf'"]),
        ("40\tlb", "force", ["a mass", "a force", "'40 lbf'"]),
        ("40 kg", "force", ["a mass", "a force", "lbf"]),
        ("40 lbf", "mass", ["a force", "a mass", "lb"]),
        ("2 lb/ft^2", "pressure", ["a mass per area", "a pressure", "'2 lbf/ft^2'"]),
        ("2 psf", "area density", ["a pressure", "a mass per area", "lb/ft^2"]),
        ("150 lb/ft^3", "lateral bearing", ["a density", "'150 lbf/ft^3'"]),
        ("30 lb/ft", "line load", ["a mass per length", "'30 lbf/ft'"]),
        ("36 in^2", "length", ["an area", "a length"]),
        ("5 deg", "length", ["an angle", "a length"]),
        ("9 %", "angle", ["a ratio", "an angle"]),
        ("9 in", "slope", ["a length", "a slope"]),
        ("5 s", "length", ["a time", "a length"]),
        ("58 mph/s", "speed", ["measured in", "a speed"]),
    ],
)
def test_the_wrong_kind_is_an_error_that_names_both(text: str, kind: str, said: list[str]) -> None:
    with pytest.raises(UnitError) as refusal:
        read_dimension(text, kind)
    for words in said:
        assert words in refusal.value.hint


# What pint, fed with the whole text, takes for something else without an error (or with one that
# does not help): each must be read as the trade reads it, or be refused.
@pytest.mark.parametrize(
    ("text", "inches"),
    [("1 1/2 in", 1.5), ("5 7/8 in", 5.875), ('36"', 36), ("4 ft 6 in", 54)],
)
def test_traps_of_reading_text_with_a_unit_library(text: str, inches: float) -> None:
    assert read_dimension(text, "length").value == pytest.approx(inches * INCH, rel=1e-14)


@pytest.mark.parametrize("text", ["16d", "10 Nm", "3 ft*in mm", "5 furlong", "1 week"])
def test_units_of_no_trade_are_unknown(text: str) -> None:
    with pytest.raises(UnitError):
        units.Q(text)


@pytest.mark.parametrize("spelling", sorted(units.by_spelling()))
def test_pint_takes_every_unit_from_the_same_file_for_the_same(spelling: str) -> None:
    unit = units.by_spelling()[spelling]
    one = units.registry().Quantity(1.0, spelling).to_base_units()
    assert one.magnitude == pytest.approx(unit.factor, rel=1e-14)
    powers = dict(one.dimensionality)
    assert tuple(powers.get(f"[{base}]", 0) for base in ("length", "mass", "time")) == unit.dims[:3]


@pytest.mark.parametrize("kind", sorted(units.UNIT_KINDS))
def test_every_unit_offered_for_a_kind_is_of_that_kind(kind: str) -> None:
    for unit in units.UNIT_KINDS[kind].spellings:
        assert read_dimension(f"2 {unit}", kind).value > 0.0


sixteenths = st.integers(1, 16 * 1200)


def _as_on_a_tape(n: int) -> str:
    whole, rest = divmod(Fraction(n, 16), 1)
    return " ".join(str(part) for part in (whole, rest) if part)


@given(sixteenths)
def test_sixteenths_of_an_inch_come_back(n: int) -> None:
    exact = pytest.approx(n / 16 * INCH, rel=1e-14)
    text = _as_on_a_tape(n)
    assert read_dimension(f"{text} in", "length").value == exact
    assert read_dimension(f'{text}"', "length").value == exact
    assert read_dimension(text.replace(" ", "-") + " in", "length").value == exact


@given(st.integers(1, 100), st.integers(1, 12 * 16 - 1))
def test_feet_and_inches_come_back(feet: int, n: int) -> None:
    exact = pytest.approx(feet * FOOT + n / 16 * INCH, rel=1e-14)
    inches = _as_on_a_tape(n)
    for text in (f"{feet} ft {inches} in", f"{feet}'-{inches}\"", f"{feet}’ {inches}”"):
        assert read_dimension(text, "length").value == exact
    assert read_dimension(f"{feet} ft {inches}", "length").value == exact


@given(st.decimals(min_value=0, max_value=100_000, places=3, allow_nan=False))
def test_decimals_come_back(number: object) -> None:
    assert read_dimension(f"{number} mm", "length").value == pytest.approx(
        float(str(number)) / 1000
    )


@given(st.text(max_size=70))
def test_any_text_is_read_or_refused_in_words(text: str) -> None:
    for kind in units.UNIT_KINDS:
        outcome = _outcome(text, kind)
        assert outcome.hint if isinstance(outcome, UnitError) else math.isfinite(outcome)


@given(st.text(alphabet="0123456789 /-.'\"’”½¼ftinmcdylboz°%", max_size=20))
def test_any_near_miss_is_read_or_refused_in_words(text: str) -> None:
    outcome = _outcome(text, "length")
    assert outcome.hint if isinstance(outcome, UnitError) else outcome >= 0.0


def _outcome(text: str, kind: str) -> UnitError | float:
    try:
        return read_dimension(text, kind).value
    except UnitError as refusal:
        return refusal


def test_quantities_keep_the_unit_in_which_they_were_written() -> None:
    length = units.Q("5'-6 1/2\"")
    assert f"{length:~}" == "66.5 in"
    assert units.Q("58 mph").to("m/s").magnitude == pytest.approx(58 * 0.44704)
    assert units.Q("-3 in").magnitude == -3.0
    assert str(units.Q("35 lb/ft^3").units) == "pound / foot ** 3"
    with pytest.raises(UnitError, match="unit"):
        units.Q("36")
    with pytest.raises(UnitError, match="Known are"):
        units.Q("36 xx")


def test_quantities_of_any_registry_are_taken() -> None:
    theirs = pint.UnitRegistry()
    assert to_si(36 * theirs.inch, "length") == pytest.approx(36 * INCH)
    assert to_si(units.Q("36 in"), "length") == pytest.approx(36 * INCH)
    assert to_si("36 in", "length") == pytest.approx(36 * INCH)
    assert to_si(150 * theirs.lbf / theirs.ft**3, "lateral bearing") == pytest.approx(
        150 * POUND_FORCE / FOOT**3
    )
    assert to_si(5 * theirs.degree, "slope") == pytest.approx(math.radians(5))
    assert to_si(9 * theirs.percent, "slope") == pytest.approx(math.atan(0.09))
    assert to_si(-3 * theirs.m, "length", signed=True) == -3.0
    assert to_si(np.array([3.0, 4.0]) * theirs.ft, "length") == pytest.approx([3 * FOOT, 4 * FOOT])


def test_quantities_that_do_not_fit_are_refused() -> None:
    theirs = pint.UnitRegistry()
    for value, kind, said in [
        (5 * theirs.degree, "length", "an angle"),
        (40 * theirs.lb, "force", "a mass"),
        (3 * theirs.kelvin, "length", "kelvin"),
        (theirs.Quantity(3), "angle", "a ratio"),
        (5 * theirs.percent, "angle", "a ratio"),
        (-3 * theirs.m, "length", "negative"),
        (float("nan") * theirs.m, "length", "finite"),
        (np.array([3.0, math.nan]) * theirs.m, "length", "finite"),
        (np.array([3.0, -1.0]) * theirs.m, "length", "negative"),
        (3, "length", "'3 in'"),
    ]:
        with pytest.raises(UnitError, match=said):
            to_si(value, kind)  # pyright: ignore[reportArgumentType]


def test_si_values_come_back_as_quantities() -> None:
    assert units.quantity(0.9144, "length", "in").magnitude == pytest.approx(36.0)
    assert units.quantity(0.9144, "length", "ft").magnitude == pytest.approx(3.0)
    assert units.quantity(math.atan(0.09), "slope", "%").magnitude == pytest.approx(9.0)
    assert units.quantity(12.0, "speed").magnitude == 12.0
    with pytest.raises(UnitError, match="a mass"):
        units.quantity(1.0, "length", "lb")


def test_an_unknown_kind_is_a_mistake_of_the_caller() -> None:
    with pytest.raises(KeyError):
        read_dimension("36 in", "lenght")


def test_importing_and_reading_loads_no_pint() -> None:
    script = (
        "import sys, yardfast.units as u; u.read_dimension('4 ft 6 in', 'length'); "
        "u.read_dimension('150 lbf/ft^3', 'lateral bearing'); "
        "sys.exit(any(m in sys.modules for m in ('pint', 'numpy', 'scipy')))"
    )
    assert subprocess.run([sys.executable, "-c", script], check=False).returncode == 0


@pytest.mark.parametrize(
    ("name", "value"),
    [
        *(("INCH", 0.0254), ("FOOT", 0.3048), ("MPH", 0.44704), ("KMH", 1 / 3.6)),
        *(("POUND", 0.45359237), ("POUND_FORCE", 4.4482216152605), ("GRAVITY", 9.80665)),
        *(("PSF", 47.880258980336), ("PSI", 6894.7572931684)),
    ],
)
def test_what_one_of_each_is_in_si(name: str, value: float) -> None:
    """NIST SP 811 (2008) appendix B.8, exact but for the last two, which follow from it."""
    assert getattr(units, name) == pytest.approx(value, rel=1e-13)


def test_no_room_states_a_unit_of_its_own() -> None:
    root = Path(units.__file__).parent.parent
    stated = re.compile(
        r"0\.0254|0\.3048|0\.44704|0\.4535|4\.4482|9\.8066|47\.880|6894|1\.0 / 3\.6"
    )
    rooms = ("references", "materials", "design", "loads", "checks", "report", "cli")
    files = [file for room in rooms for file in (root / room).rglob("*.py")]
    assert len(files) > 100
    assert [f"{file}" for file in files if stated.search(file.read_text(encoding="utf-8"))] == []


@pytest.mark.parametrize("given", [3, 3.5, True, None, ["3 in", 4], b"3 in"])
def test_a_quantity_without_a_unit_is_made_of_text_alone(given: object) -> None:
    with pytest.raises(UnitError, match="is not a number with its unit"):
        units.Q(given)


def test_a_unit_error_goes_from_process_to_process() -> None:
    with pytest.raises(UnitError) as raised:
        read_dimension(
            "36 lbs of wood and a good deal more text than anyone would write here", "length"
        )
    there = pickle.loads(pickle.dumps(raised.value))
    assert type(there) is UnitError
    assert (there.found, there.expected, there.hint) == (
        raised.value.found,
        raised.value.expected,
        raised.value.hint,
    )
    assert str(there) == str(raised.value)


def test_numbers_are_written_as_people_write_them():
    # Six figures of a whole number, none of an exponent, no minus before nothing.
    assert [units.plain(v) for v in (1234567.0, 0.00001234567, -0.0, -1e-300, 12.0, 0.25)] == [
        *("1235000", "0.00001235", "0"),
        *("-0." + "0" * 299 + "1", "12", "0.25"),
    ]
    assert units.plain(99999.6, 5) == "100000"
    assert units.plain(float("inf")) == "without bound"


def test_figures_part_thousands_and_have_no_minus_before_nothing():
    assert [units.figure(v, 1) for v in (12345.67, -0.04, -0.06)] == ["12,345.7", "0.0", "-0.1"]


_REGISTRY = pint.UnitRegistry()
_AXES = ("[length]", "[mass]", "[time]")


@pytest.mark.parametrize("kind", kinds.UNIT_KINDS)
def test_each_kind_has_the_dimensions_that_a_library_of_units_gives_its_si_unit(kind: str) -> None:
    """By pint; an angle has none there, and is an axis of its own here."""
    one = kinds.UNIT_KINDS[kind]
    dims = _REGISTRY.Unit(one.si).dimensionality
    assert one.dims[:3] == tuple(int(dims.get(axis, 0)) for axis in _AXES)
    assert one.dims[3] == (kind in ("angle", "slope"))


@pytest.mark.parametrize(
    ("text", "called"),
    [
        ("5", "a ratio"),
        ("m^2", "an area"),
        ("m^3", "a volume"),
        ("s", "a time"),
        ("N*m", "a moment"),
        ("kg/m", "a mass per length"),
    ],
)
def test_other_quantities_are_called_by_the_dimensions_of_a_library(text: str, called: str) -> None:
    dims = _REGISTRY.Quantity(text).dimensionality
    key = *(int(dims.get(axis, 0)) for axis in _AXES), 0
    assert kinds.OTHER_KINDS[key] == called


def test_numbers_within_a_unit_have_no_dimensions() -> None:
    """1000 kg/m3 over 10 is a density still: a factor by itself is of no kind."""
    found = known.find_unit("kg/m^3", "1 kg/m^3", "a density")
    assert (found.factor, found.dims) == (1.0, (-3, 1, 0, 0))
    for text, factor in (("1000*m", 1000.0), ("m/2", 0.5), ("12*in", 0.3048)):
        each = known.find_unit(text, text, "a length")
        assert (each.factor, each.dims) == (pytest.approx(factor), (1, 0, 0, 0))
    assert known.by_spelling()["ft"].dims == (1, 0, 0, 0)


@pytest.mark.parametrize("degrees", [0.0, 5.71, 30.0])
def test_a_slope_is_handed_back_in_percent_or_in_degrees(degrees: float) -> None:
    """100 tan: 10 % is 5.71 degrees; an angle has no per cent."""
    slope = math.radians(degrees)
    percent = units.quantity(slope, "slope", "%")
    assert percent.magnitude == pytest.approx(100.0 * math.tan(slope))
    assert units.quantity(slope, "slope", "deg").magnitude == pytest.approx(degrees)
    with pytest.raises(UnitError):
        units.quantity(slope, "angle", "%")
