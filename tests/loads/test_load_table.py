"""The ``[[load]]`` table becomes GivenLoads in SI, or faults that say what would be right."""

from math import cos, radians, sin

import pytest
from sample_file import HARBOUR_LIGHT, design, faults, the_fault

from yardfast.loads.given import GivenLoad

POUND_FORCE = 4.4482216152605  # N, exact: 0.45359237 kg times standard gravity
INCH = 0.0254  # international inch, exact

SWING = "name='swing'\nforce='50 lbf'\nat=['-6 in','0 in','5 ft']\ndirection='down'\n"


def loads(*tables: str) -> tuple[GivenLoad, ...]:
    return design(text(*tables)).several(GivenLoad)


def text(*tables: str) -> str:
    return HARBOUR_LIGHT + "".join(f"[[load]]\n{table}" for table in tables)


def test_a_load_is_read_in_si() -> None:
    (found,) = loads(SWING)
    assert (found.name, found.direction) == ("swing", (0.0, 0.0, -1.0))
    assert found.force == pytest.approx(50 * POUND_FORCE)
    assert found.at == pytest.approx((-6 * INCH, 0.0, 60 * INCH))


def test_without_a_load_there_is_an_empty_tuple() -> None:
    assert loads() == ()


def test_several_loads_keep_their_order() -> None:
    more = SWING.replace("swing", "rope").replace("'50 lbf'", "'120 N'")
    assert [(load.name, round(load.force, 6)) for load in loads(SWING, more)] == [
        ("swing", round(50 * POUND_FORCE, 6)),
        ("rope", 120.0),
    ]


@pytest.mark.parametrize(
    ("written", "way"),
    [
        # The axes of the design: x right, y away from you, z up.
        ("down", (0, 0, -1)),
        ("Up", (0, 0, 1)),
        ("left", (-1, 0, 0)),
        ("right", (1, 0, 0)),
        ("front", (0, -1, 0)),
        ("back", (0, 1, 0)),
        # A compass azimuth: clockwise from the back.
        ("0 deg", (0, 1, 0)),
        ("90 deg", (1, 0, 0)),
        ("180 deg", (0, -1, 0)),
        ("-90 deg", (-1, 0, 0)),
        ("30 deg", (sin(radians(30)), cos(radians(30)), 0)),
        ("30°", (0.5, 3**0.5 / 2, 0)),
    ],
)
def test_a_direction_is_the_way_that_it_pushes(written: str, way) -> None:
    (found,) = loads(SWING.replace("'down'", f"'{written}'"))
    assert found.direction == pytest.approx(way, abs=1e-15)


@pytest.mark.parametrize(
    ("old", "new", "key", "found", "expected", "hint"),
    [
        ("direction='down'\n", "", "direction", "no 'direction'", "'down', 'up'", "'down', or"),
        ("force='50 lbf'\n", "", "force", "no 'force'", "a force", "force = '20 lbf'"),
        ("at=['-6 in','0 in','5 ft']\n", "", "at", "no 'at'", "three lengths", "at = ["),
        ("name='swing'\n", "", "name", "no 'name'", "text", "name = 'swing'"),
        ("'50 lbf'", "'50 lb'", "force", "50 lb", "a force", "'50 lbf'"),
        ("'50 lbf'", "50", "force", "50", "a force", "force = '50 lbf'"),
        ("'50 lbf'", "'0 N'", "force", "0 N", "more than 0", ""),
        ("'50 lbf'", "'-5 N'", "force", "-5 N", "a force", "negative"),
        ("'50 lbf'", "'200 kip'", "force", "200 kip", "at most 100,000 lbf", ""),
        ("'down'", "'donw'", "direction", "donw", "or an angle", "'down'?"),
        ("'down'", "'north'", "direction", "north", "or an angle", "'0 deg'"),
        ("'down'", "30", "direction", "30", "or an angle", "direction = '30 deg'"),
        ("'down'", "'30'", "direction", "30", "an angle", "'30 deg'"),
        ("'down'", "'400 deg'", "direction", "400 deg", "360 degrees", ""),
        ("'down'", "['down']", "direction", "['down']", "'down', 'up'", "direction = "),
        ("'5 ft']", "5]", "at", "5", "a length", "'5 in'"),
        ("force=", "weight='3 lb'\nforce=", "weight", "weight", "one of name, force", "[[part]]"),
    ],
)
def test_one_thing_wrong_is_one_fault(old, new, key, found, expected, hint) -> None:
    assert old in SWING
    fault = the_fault(text(SWING.replace(old, new)))
    name = "load 1" if key == "name" else "swing"
    assert (fault.part, fault.key, fault.found) == (name, key, found)
    assert expected in fault.expected
    assert hint in fault.hint


@pytest.mark.parametrize("on", ["tower", "roof"])
def test_a_load_may_name_the_part_that_it_acts_on(on: str) -> None:
    (found,) = loads(SWING + f"on='{on}'\n")
    assert found.on == on
    assert found.at == pytest.approx((-6 * INCH, 0.0, 60 * INCH))


def test_a_load_on_a_part_that_is_not_there_offers_the_nearest() -> None:
    fault = the_fault(text(SWING + "on='towr'\n"))
    assert (fault.part, fault.key, fault.found) == ("swing", "on", "towr")
    assert fault.expected == "the name of a part: 'foot', 'tower', 'gallery', 'roof'"
    assert fault.hint == "'tower'?"


def test_a_word_for_the_part_is_answered() -> None:
    fault = the_fault(text(SWING + "part='tower'\n"))
    assert (fault.key, fault.found) == ("part", "part")
    assert "'on'" in fault.hint


def test_loads_have_names_of_their_own() -> None:
    fault = the_fault(text(SWING, SWING))
    line = HARBOUR_LIGHT.count("\n") + 2
    assert (fault.key, fault.found) == ("name", "swing")
    assert fault.expected == f"a name of its own: a load on line {line} has it already"


def test_a_value_without_quote_marks_is_said_of_its_load() -> None:
    fault = the_fault(text(SWING, SWING.replace("swing", "rope").replace("'50 lbf'", "50 lbf")))
    assert (fault.part, fault.key, fault.found) == ("rope", "force", "50 lbf")


def test_faults_of_loads_and_parts_come_together() -> None:
    found = faults(text(SWING.replace("'50 lbf'", "'50 lb'")).replace("'48 in'", "48"))
    assert [(fault.part, fault.key) for fault in found] == [("tower", "height"), ("swing", "force")]


def test_a_load_needs_double_brackets() -> None:
    fault = the_fault(f"{HARBOUR_LIGHT}[load]\n{SWING}")
    assert (fault.found, fault.expected) == ("[load]", "[[load]]")
