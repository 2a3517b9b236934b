"""The gust at which the first joint is used up: the check itself, asked in that gust, says so."""

import re

import numpy as np
import pytest

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read, read_text
from yardfast.checks.judged.judging import Kind
from yardfast.checks.odds.joints_give import JointsGive, _table, joints_give
from yardfast.checks.odds.odds import odds
from yardfast.checks.odds.varied import Varied
from yardfast.checks.spread import INPUTS

STILL = "".join(f"\n[[odds]]\nname = '{name}'\nspread = 0\n" for name in INPUTS)


def weighed(name: str) -> str:
    """Return an example as a scale would have it, so that no band of weights is tried, judged
    without a factor of safety."""
    file = f"examples/{name}.toml"
    text = read(file).text
    mass = examine(read_text(text, file)).structure.mass("typical")
    text = re.sub(r"(?m)^\[design\]", f"[design]\nweighed = '{mass:.9f} kg'", text, count=1)
    return re.sub(r"(?m)^\[site\]", "[site]\nsafety = 1", text, count=1)


@pytest.mark.slow
@pytest.mark.parametrize("name", ["heron", "birdhouse"])
def test_the_check_in_that_gust_uses_the_joint_up(name: str) -> None:
    """Loads without factors, against what the book lets it hold: use 1 by the whole check."""
    text, file = weighed(name), f"examples/{name}.toml"
    _, told = odds(read_text(text + STILL, file), samples=4)
    assert told.joint is not None
    gust = told.joint.p50
    asked = re.sub(r"(?m)^(wind\s*=\s*)'[^']*'", rf"\1'{gust:.6f} m/s'", text, count=1)
    found = examine(read_text(asked, file))
    used = [c.utilization or 0.0 for c in found.checks if c.kind is Kind.JOINT and not c.load]
    assert max(used) == pytest.approx(1.0, abs=0.04)
    name_ = next(c.subject for c in found.checks if c.utilization == max(used))
    assert name_ == told.first_joint


def test_twice_the_weight_and_fasteners_stand_twice_the_pressure() -> None:
    """Equilibrium is linear: what goes through a joint grows with all loads alike."""
    found = examine(read("examples/heron.toml"))
    give = joints_give(found)
    assert isinstance(give, JointsGive)
    used_most = max(found.joints, key=lambda one: one.check.rank).row.name
    assert set(give.names) == {used_most} == {"heron to plank"}
    one = np.ones(3)
    inputs = Varied({}, one, one, one, one, one, fastening=np.array([0.7, 1.4, 1.4]))
    q = give.at(np.array([1.0, 2.0, 1.0]), inputs)
    assert q[1] == pytest.approx(2.0 * q[0])
    assert q[0] < q[2]
    assert give.at(one, inputs)[0] == pytest.approx(np.interp(0.7, give.used, give.pressures))


def test_a_joint_that_holds_nothing_gives_way_in_calm_air() -> None:
    """What holds nothing holds nothing of a load, however light: every piece, at any gust."""
    give = _table(lambda pressure: (np.inf, "heron to foot"))
    one = np.ones(4)
    assert give.at(one, Varied({}, one, one, one, one, one, one)).tolist() == [0.0] * 4
    assert give.first == "heron to foot"


def test_a_coefficient_counts_as_pressure() -> None:
    give = JointsGive(np.array([0.0, 100.0, 200.0]), np.array([0.1, 0.5, 0.9]), ("a", "b", "b"))
    one = np.ones(1)
    plain = Varied({}, one, one, one, one, one, one)
    pushed = Varied({}, one, one, 2.0 * one, one, one, one)
    assert give.at(one, plain) == pytest.approx(225.0)  # straight on beyond the last
    assert give.at(one, pushed) == pytest.approx(112.5)
    assert give.first == "b"
