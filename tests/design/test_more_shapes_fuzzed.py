"""Whatever is typed of the further shapes, a person gets a Design or faults."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sample_file import faults, part_text
from spoiling import SCRAPS, reads_or_says_what_is_wrong

ENDS = "shape='member'\nfrom=['0 in','0 in','0 in']\nto=['0 in','0 in','3 ft']"
CUTOUT = "shape='cutout'\nthickness='1 in'"
SQUARE = f"{CUTOUT}\npoints=[['0 in','0 in'],['9 in','0 in'],['9 in','9 in'],['0 in','9 in']]"
GABLE = "shape='gable'\nlength='4 ft'\nwidth='4 ft'\nheight='3 ft'"
DOME = "shape='dome'\nacross='2 ft'"
VAULT = "shape='vault'\nlength='2 ft'\nwidth='2 ft'"
STEP = "step=['1 in','0 in','0 in']\nat=['9 in','0 in','0 in']"


def points(*pairs: tuple[float, float]) -> str:
    return "[" + ",".join(f"['{x} in','{z} in']" for x, z in pairs) + "]"


FULL = (
    part_text(
        f"{ENDS}\nlumber='2x4 flat'\ncut='level'\ntilt='5 deg'\ncount=3\n{STEP}\nmirror=['x', 'y']"
    ).replace("'piece'", "'leg'")
    + f"[[part]]\nname='bird'\n{SQUARE}\nholes=[{points((1, 1), (5, 1), (5, 5))}]\nmaterial='OSB'\n"
    "loose=true\non='leg'\n"
    f"[[part]]\nname='roof'\n{GABLE}\nknee_width='3 ft'\nknee_height='2 ft'\nmaterial='OSB'\n"
    "covering='asphalt shingles'\nunder='bird'\n"
    f"[[part]]\nname='cap'\n{DOME}\nheight='6 in'\nmaterial='OSB'\nhangs_at='5 ft'\n"
    f"[[part]]\nname='arch'\n{VAULT}\nheight='1 ft'\nwall='1 in'\nmaterial='OSB'\n"
    "[[load]]\nname='swing'\nforce='50 lbf'\nat=['0 in','0 in','5 ft']\ndirection='30 deg'\n"
)
LINES = FULL.split("\n")


def test_the_file_to_be_spoilt_reads() -> None:
    assert faults(FULL) == ()


@pytest.mark.slow
@given(st.lists(st.tuples(st.integers(0, len(FULL)), SCRAPS, st.integers(0, 20)), max_size=6))
@settings(max_examples=400, deadline=None)
def test_a_file_with_scraps_typed_into_it(changes: list[tuple[int, str, int]]) -> None:
    text = FULL
    for place, scrap, gone in changes:
        text = text[:place] + scrap + text[place + gone :]
    reads_or_says_what_is_wrong(text)


@pytest.mark.slow
@given(st.lists(st.tuples(st.integers(0, len(LINES) - 1), SCRAPS), max_size=5))
@settings(max_examples=400, deadline=None)
def test_a_file_with_other_values(changes: list[tuple[int, str]]) -> None:
    lines = list(LINES)
    for place, scrap in changes:
        lines[place] = f"{lines[place].partition('=')[0]}= {scrap}"
    reads_or_says_what_is_wrong("\n".join(lines))


@given(st.permutations(range(len(LINES))), st.integers(0, len(LINES)))
@settings(max_examples=100, deadline=None)
def test_a_file_with_its_lines_shuffled(order: list[int], kept: int) -> None:
    reads_or_says_what_is_wrong("\n".join(LINES[k] for k in order[:kept]))


@given(
    st.lists(
        st.tuples(*[st.sampled_from([0, 1, 2, 3, 4, 5, 1e-4, 7.5]) for _ in range(2)]), max_size=9
    ),
    st.lists(
        st.tuples(*[st.sampled_from([1, 2, 3, 4, 2.5]) for _ in range(2)]), min_size=3, max_size=5
    ),
)
@settings(max_examples=300, deadline=None)
def test_any_points_make_a_board_or_a_fault(outline, hole) -> None:
    reads_or_says_what_is_wrong(
        part_text(f"{CUTOUT}\npoints={points(*outline)}\nholes=[{points(*hole)}]")
    )
