"""The examples: each reads, stands on the ground in one piece, and is judged to the end."""

import json
import re
import tomllib
from fractions import Fraction
from itertools import combinations
from math import isfinite

import numpy as np
import pytest
from garden import EXAMPLES, each_example, every_example

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read, read_text
from yardfast.checks.judged.judging import Kind
from yardfast.cli import main
from yardfast.design.overlaps import overlaps
from yardfast.design.structure import build_structure

NAMES = [file.stem for file in EXAMPLES]


def test_the_garden_is_complete():
    assert NAMES == [
        "arbor",
        "birdhouse",
        "blade-wheel",
        "boathouse",
        "fingerpost",
        "footbridge",
        "head-light",
        "heron",
        "light-tower",
        "light-tower-asce",
        "mailbox",
        "pinwheel",
        "seat-box",
        "signpost",
        "swing",
        "three-pieces",
        "well",
    ]
    assert {read(file).units for file in EXAMPLES} == {"imperial", "metric"}


@every_example
def test_an_example_is_judged_with_finite_limits(file):
    found = examine(read(file))
    limits = found.limits
    slides = (limits.sliding, limits.forecast_sliding) if found.posts is None else ()
    told = (
        limits.tipping_low,
        limits.tipping,
        limits.tipping_high,
        limits.forecast_tipping,
        *slides,
        limits.act,
        limits.push,
    )
    assert all(value is not None and isfinite(value) and value > 0.0 for value in told)
    assert limits.tipping_low < limits.tipping < limits.tipping_high


@each_example
def test_the_command_prints_a_verdict_and_strict_json(file, capsys):
    status = main(["check", str(file)])
    assert status == (0 if file.stem in ("mailbox", "fingerpost") else 1)
    shown = capsys.readouterr()
    assert shown.err == ""
    assert "Not looked at" in shown.out
    assert main(["check", "--format", "json", str(file)]) == status
    json.loads(capsys.readouterr().out, parse_constant=pytest.fail)


@every_example
def test_no_two_parts_share_space(file):
    assert overlaps(build_structure(read(file))) == ()


@every_example
def test_every_part_touches_another(file):
    boxes = [body.extent for body in build_structure(read(file)).bodies]
    # A wheel's blades lie before its head, and what swings hangs from a cord: neither is drawn.
    slack = 3.5 * 0.0254
    joined = {0}
    for _ in boxes:
        for (i, one), (j, other) in combinations(enumerate(boxes), 2):
            if (one[0] <= other[1] + slack).all() and (other[0] <= one[1] + slack).all():
                joined |= {i, j} if joined & {i, j} else set()
    assert joined == set(range(len(boxes)))


def test_the_light_tower_is_the_same_under_both_methods():
    forecast, code = (read(EXAMPLES[NAMES.index(n)]) for n in ("light-tower", "light-tower-asce"))
    assert forecast.parts == code.parts
    text = EXAMPLES[NAMES.index("light-tower-asce")].read_text(encoding="utf-8")
    assert "example only: ask the building department" in text


LIMITS = ("tipping_low", "tipping", "sliding", "act")

BY_STIFFNESS = (Kind.JOINT, Kind.MEMBER, Kind.RACKING)
"""What follows from stiffness keeps fewer digits: springs 1e7 times as stiff as others lose as many
of the sixteen, and every body is in balance to 1e-8."""


@each_example
def test_the_other_system_of_units_gives_the_same_result(file):
    text = file.read_text(encoding="utf-8")
    twin = _in_the_other_system(text)
    one, other = (examine(read_text(each, str(file))) for each in (text, twin))
    assert one.design.units != other.design.units
    assert not set(_lengths(text)) & set(_lengths(twin))
    for pick in (
        lambda e: e.structure.part_mass,
        lambda e: e.structure.part_centre,
        lambda e: e.wind.force,
        lambda e: e.wind.uplift,
        lambda e: [(c.demand, c.capacity) for c in e.checks if c.kind not in BY_STIFFNESS],
        lambda e: [getattr(e.limits, key) or 0.0 for key in LIMITS],
    ):
        np.testing.assert_allclose(pick(one), pick(other), rtol=1e-9, atol=1e-9)
    forces = [
        [(c.demand, c.capacity) for c in e.checks if c.kind in BY_STIFFNESS] for e in (one, other)
    ]
    np.testing.assert_allclose(*forces, rtol=1e-8, atol=1e-9)


# --- a file in the other system, by exact factors: 1 in = 25.4 mm, 1 mph = 0.44704 m/s,
# --- 1 lb = 0.45359237 kg (NIST SP 811, Appendix B)

_TO = {
    "in": (Fraction("25.4"), "mm"),
    "ft": (Fraction("304.8"), "mm"),
    "mm": (1 / Fraction("25.4"), "in"),
    "mph": (Fraction("0.44704"), "m/s"),
    "km/h": (Fraction(10, 36) / Fraction("0.44704"), "mph"),
    "lb": (Fraction("0.45359237"), "kg"),
}
_QUANTITY = re.compile(r"'(-?)(?:(\d+) )?(\d+(?:/\d+)?) (in|ft|mm|mph|km/h|lb)'")


def _in_the_other_system(text):
    def other(found):
        sign, whole, number, unit = found.groups()
        by, name = _TO[unit]
        value = (int(whole or 0) + Fraction(number)) * by
        return f"'{sign}{value.numerator}/{value.denominator} {name}'"

    swapped = {"imperial": "metric", "metric": "imperial"}
    text = re.sub(r"(units *= )'(\w+)'", lambda m: f"{m[1]}'{swapped[m[2]]}'", text)
    return _QUANTITY.sub(other, text)


def _lengths(text):
    data = tomllib.loads(text)
    keys = ("height", "length", "width", "bottom", "across", "ring", "span")
    return [part[key] for part in data["part"] for key in keys if key in part]
