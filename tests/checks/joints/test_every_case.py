"""What is looked at in some load cases, against solving every case by every set of stiffness."""

import numpy as np
import pytest
from garden import EXAMPLES
from inside import forces_in

from yardfast.checks.acting.internal_forces import InternalForces
from yardfast.checks.inputs import read_text
from yardfast.checks.strength import NEARLY_USED, strength_of
from yardfast.loads.combinations import factors_of_parts, resistance_basis
from yardfast.loads.wind.site import Site

KMH = {"gentle": "50 km/h", "by little": "56 km/h"}
"""Gusts on the swing's empty seat and frame."""


def swing(gust):
    """The garden's swing, one hand on its beam and nobody on its seat, in a gust."""
    file = next(file for file in EXAMPLES if file.stem == "swing")
    text = file.read_text(encoding="utf-8")
    for old, new in (("75 km/h", gust), ("people   = 'children'\n", ""), ("450 N", "100 N")):
        assert old in text
        text = text.replace(old, new)
    return read_text(text, "swing.toml")


def judged(design):
    site = design.table(Site)
    found = strength_of(forces_in(design), factors_of_parts(site), resistance_basis(site))
    (joint,) = found.joints
    return joint.check


def solved_whole(design, monkeypatch):
    """The same, every load case solved by every set of stiffness."""
    some = InternalForces.enveloped
    with monkeypatch.context() as patch:
        patch.setattr(
            InternalForces,
            "enveloped",
            lambda forces, _: some(forces, np.arange(len(forces.cases.of))),
        )
        return judged(design)


def test_a_joint_that_would_hold_by_little_is_looked_at_in_every_case(monkeypatch):
    """The case that governs is the 30th as read: in the few looked at first it is 0.966, held."""
    design = swing(KMH["by little"])
    told, whole = judged(design), solved_whole(design, monkeypatch)
    assert told.utilization == pytest.approx(1.01264, abs=1e-5)
    assert told.utilization == pytest.approx(whole.utilization, rel=1e-9)
    assert not told.passes


def test_what_holds_by_more_is_told_as_near_as_what_it_is_looked_again_for(monkeypatch):
    """What the cases looked at first miss is far less than what is left below NEARLY_USED."""
    design = swing(KMH["gentle"])
    told, whole = judged(design), solved_whole(design, monkeypatch)
    assert told.utilization < NEARLY_USED
    assert whole.utilization <= told.utilization / NEARLY_USED
