"""Whatever is in the file, a person gets a Design or faults, never a traceback."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sample_file import HARBOUR_LIGHT, site
from spoiling import SCRAPS, reads_or_says_what_is_wrong

from yardfast.checks.inputs import read
from yardfast.design.faults import DesignError

FULL = site(
    "method='ASCE 7-22'\nground='sand'\nexposure='C'\nwind='115 mph'\nreturn_period='700 years'\n"
    "risk_category=2\nslope='10 %'\nelevation='1000 m'\npeople='children'\nhurricane=false\n"
    "gusts={ 50 = '75 mph', 10 = '60 mph' }"
).replace("name     = 'roof'", "name = 'roof'\nat=['1 in',\n'0 in', '0 in']\ncount=3\nring='4 in'")
LINES = FULL.split("\n")


@given(st.text(max_size=300))
@settings(deadline=None)
def test_any_text(text: str) -> None:
    reads_or_says_what_is_wrong(text)


@given(st.binary(max_size=300))
@settings(deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_any_bytes(tmp_path: Path, raw: bytes) -> None:
    file = tmp_path / "piece.toml"
    file.write_bytes(raw)
    with pytest.raises(DesignError):
        read(file)


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
@settings(max_examples=200, deadline=None)
def test_a_file_with_its_lines_shuffled(order: list[int], kept: int) -> None:
    reads_or_says_what_is_wrong("\n".join(LINES[k] for k in order[:kept]))


@given(st.integers(0, len(HARBOUR_LIGHT)))
@settings(deadline=None)
def test_a_file_cut_off(end: int) -> None:
    reads_or_says_what_is_wrong(HARBOUR_LIGHT[:end])


@pytest.mark.parametrize(
    "text",
    [
        "[" * 10_000,
        f"{HARBOUR_LIGHT}x = {'[' * 10_000}",
        f"{HARBOUR_LIGHT}x = {'{a=' * 10_000}",
        f"{HARBOUR_LIGHT}{'a.' * 10_000}a = 1",
        f"{HARBOUR_LIGHT}{'a.' * 200_000}a = 1",
        f"{HARBOUR_LIGHT}x = {{ {'a.' * 200_000}a = 1 }}",
        f"{HARBOUR_LIGHT}[{'a.' * 10_000}a]",
        f"{HARBOUR_LIGHT}[part.{'a.' * 10_000}a]",
        HARBOUR_LIGHT.replace("= 8", f"= {'9' * 10_000}"),
        HARBOUR_LIGHT.replace("= 8", "= 0x" + "f" * 10_000),
        HARBOUR_LIGHT.replace("'48 in'", "'" + "9" * 400 + " in'"),
        HARBOUR_LIGHT.replace("name     = 'foot'", "name     = '" + "f" * 10_000 + "'"),
        "part = [1]\n",
        "part = 1\nsite = 2\ndesign = 3\n",
        "part = {}\nsite = {}\ndesign = {}\n",
        "site = [{}, {}]\n[design]\n",
        "'design' = {}\n[[part]]\n",
    ],
)
def test_what_a_spiteful_hand_types(text: str) -> None:
    reads_or_says_what_is_wrong(text)
