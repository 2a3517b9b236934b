"""What is wrong with a drawing is said of the part that is to be sawn to it."""

from pathlib import Path

import pytest
from drawings import SPACE, drawing, drawn_faults
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sample_file import part_text

from yardfast.checks.inputs import read_text
from yardfast.design.faults import DesignError

RECTANGLE = "<rect width='40' height='50'/>"
NESTED = (
    f"<defs><g id='a0'>{RECTANGLE}</g>"
    + "".join(
        f"<g id='a{k}'>" + f"<use xlink:href='#a{k - 1}'/>" * 10 + "</g>" for k in range(1, 9)
    )
    + "</defs><use xlink:href='#a8'/>"
)


@pytest.mark.parametrize(
    ("drawn", "found", "expected", "hint"),
    [
        ("", "heron.svg", "an SVG drawing", "no element found"),
        ("hello", "heron.svg", "an SVG drawing", "syntax error"),
        ("<html/>", "heron.svg", "an SVG drawing", "not <svg>"),
        (f"<svg {SPACE}><rect", "heron.svg", "an SVG drawing", "unclosed token"),
        (drawing(""), "heron.svg", "a closed path", "close the path"),
        (drawing("<path d='M0 0 L4 4 L3 0'/>"), "heron.svg", "a closed path", "close the path"),
        (drawing("<path d='M0 0 h 40 z'/>"), "heron.svg", "a closed path", ""),
        (drawing("<text>Heron</text>"), "heron.svg", "a closed path", "text into paths"),
        (
            drawing("<path d='M0 0 L40 40 V0 L0 40 z'/>"),
            # The diagonals of a square, 20 in high, cross in its middle.
            "the outline, near 10 in from its left and 10 in up",
            "neither crosses",
            "one closed line",
        ),
        (
            drawing(f"{RECTANGLE}<rect x='30' y='9' width='30' height='9'/>"),
            "hole 1",
            "it crosses or touches it",
            "",
        ),
        (
            drawing("<rect width='9000' height='5'/>"),
            "36000 in wide and 20 in high",
            "at most 100 ft",
            "",
        ),
        (
            drawing("<g id='a'><use xlink:href='#a'/></g>" + RECTANGLE),
            "heron.svg",
            "an SVG drawing",
            "uses itself",
        ),
        # ten times ten times ... of one square: 10^8 of them, in 2 kB
        (drawing(NESTED), "heron.svg", "an SVG drawing", "more than 1 MB once each <use> is drawn"),
        (
            drawing(f"<path id='a' d='M0 0 {'h1 ' * 9000}v9 z'/>" + "<use href='#a'/>" * 60),
            "heron.svg",
            "an SVG drawing",
            "more than 1 MB once each <use> is drawn",
        ),
        (drawing("<g>" * 3000 + RECTANGLE + "</g>" * 3000), "heron.svg", "an SVG", "too deep"),
        (drawing("<path d='M0 0 H1e300 V1e300 z'/>"), "heron.svg", "an SVG", "lies nowhere"),
        (
            drawing("<path d='M0 0 " + " ".join(f"L{k} {k * k}" for k in range(2001)) + " z'/>"),
            "heron.svg",
            "an SVG drawing",
            "more than 2,000 corners",
        ),
        (drawing("<!--" + "x" * 1_000_000 + "-->"), "heron.svg", "at most 1 MB", "pictures"),
    ],
)
def test_a_drawing_that_cannot_be_sawn(tmp_path: Path, drawn, found, expected, hint) -> None:
    (fault,) = drawn_faults(tmp_path, drawn)
    assert (fault.part, fault.key, fault.found) == ("piece", "outline", found)
    assert expected in fault.expected
    assert hint in fault.hint


def test_a_drawing_is_named_by_the_nearest_beside_the_design(tmp_path: Path) -> None:
    keys = "height='20 in'\nthickness='1/2 in'"
    (tmp_path / "herron.svg").write_text(drawing(RECTANGLE), encoding="utf-8")
    text = part_text(f"shape='cutout'\noutline='heron.svg'\n{keys}")
    with pytest.raises(DesignError) as caught:
        read_text(text, str(tmp_path / "heron.toml"))
    (fault,) = caught.value.faults
    assert (fault.found, fault.hint) == ("heron.svg", "'herron.svg'?")


HERON = drawing(
    "<g transform='rotate(5)'><path d='M0 0 C 9 9 30 -9 40 0 A 9 9 0 0 1 40 30 Q 9 9 0 40 z m 9 9 "
    "h 3 v 3 h -3 z'/></g><circle cx='5' cy='9' r='2'/>"
)


@given(
    st.lists(
        st.tuples(
            st.integers(0, len(HERON)),
            st.sampled_from(
                ["z", "M", "0", "-1e99", "nan", "<", ">", "'", "&", "A", " ", "é", "\0"]
            ),
            st.integers(0, 9),
        ),
        max_size=5,
    )
)
@settings(
    max_examples=300, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
def test_any_drawing_makes_a_board_or_a_fault(tmp_path: Path, changes) -> None:
    drawn = HERON
    for place, scrap, gone in changes:
        drawn = drawn[:place] + scrap + drawn[place + gone :]
    for fault in drawn_faults(tmp_path, drawn):
        assert fault.key == "outline"
        assert f"{fault.found}{fault.expected}{fault.hint}".isprintable()
