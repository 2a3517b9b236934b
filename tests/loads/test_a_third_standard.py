"""A standard that is no book at all, as a test double: the face is all that the house asks."""

from dataclasses import dataclass

import numpy as np
import pytest
from designs import design as plain_design
from sample_file import design as read_design
from sample_file import the_fault

from yardfast.checks.examination import examine
from yardfast.checks.stated.surroundings import act_by_exposure
from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.structure import build_structure
from yardfast.loads import methods
from yardfast.loads.coefficients.shape_coefficients import Coefficient
from yardfast.loads.exposed import bare
from yardfast.loads.recurrence import recurrence
from yardfast.loads.roofs.roof_wind import RoofWind
from yardfast.loads.wind.site import Site
from yardfast.units.frozen import replace

NAME = "flat book"


class FlatTops:
    """Everything that is closed above is lifted by 3, free roofs by 4, whatever they are."""

    cases = (("roof lifted",),)
    document = "The Flat Book, its one figure"
    level_to = 90.0

    def strips(self, h, L, b, area):
        return np.zeros((1, len(L))), np.full((1, len(L)), 3.0)

    def on_board(self, board, along, obstructed, solid, face):
        terms = np.zeros((len(along), 1, 8))
        terms[..., 2] = 4.0 * board.region.area
        return RoofWind(terms, np.ones(len(along)))


@dataclass(frozen=True)
class FlatWind:
    speed: float
    minimum = None
    tops = FlatTops()

    def pressure(self, height):
        return np.full(np.shape(height), 0.5 * self.speed**2)

    def gust(self, height, breadth):
        return np.ones_like(breadth)

    def directionality(self, kinds):
        return np.ones(len(kinds))

    def coefficient(self, body, stack_top, azimuths, surface, board):
        two = np.full(len(azimuths), 2.0)
        return Coefficient(two, two, np.ones(len(azimuths)), "square")


class FlatBook:
    """Air of 1 kg/m3, a coefficient of 2 on everything, half the gust among houses."""

    names = (NAME,)
    is_code = False
    bases = ("strength",)

    def speed_means(self, method):
        return "the wind of the flat book"

    def document(self, method):
        return "The Flat Book, first edition"

    def tables(self, method):
        return ()

    def read_wind(self, row, method, wind):
        row.need("exposure", reason=": what lies around it")
        if wind is not None and wind > 50.0:
            row.refuse("wind", "a wind of the flat book: they end at 50 m/s", "wind = '50 m/s'")
        return wind

    def at(self, site, height):
        return FlatWind(site.wind * self.gust_ratio(site, height))

    def gust_ratio(self, site, height):
        return 0.5 if site.exposure == "B" else 1.0

    def air_density(self, site):
        return 1.0

    def in_surroundings(self, site, exposure):
        return replace(site, exposure=exposure)

    def open_gust(self, site):
        return site.wind

    def speed_of(self, gust, site, height):
        return gust

    def years(self, gust, site):
        return gust, 100.0


FILE = """
[design]
name = 'post'
units = 'metric'

[site]
method = 'flat book'
wind = '20 m/s'
exposure = 'C'
ground = 'paving'
hurricane = false

[[part]]
name = 'post'
shape = 'box'
length = '300 mm'
width = '300 mm'
height = '1500 mm'
density = '600 kg/m^3'
"""


@pytest.fixture(autouse=True)
def _third_book(monkeypatch):
    monkeypatch.setattr(methods, "STANDARDS", (*methods.STANDARDS, FlatBook()))


def test_it_is_chosen_in_the_file_and_judges_by_its_own_numbers():
    """By hand: q 200 Pa, F = 2 x 200 x 0.45 = 180 N at 0.75 m, on 0.9 G and 1.0 W."""
    found = examine(read_design(FILE))
    assert found.site.basis == "strength"
    assert found.wind.pressure == pytest.approx(200.0)
    face = int(np.abs(found.wind.azimuths).argmin())
    assert found.wind.force[face] == pytest.approx(180.0)
    assert found.overturning.demand >= 180.0 * 0.75


def test_limits_are_in_its_own_air():
    """Hand: 2 q 0.45 (cos a + sin a) cos a 0.75 = W 0.15, worst of every 5 degrees at a = 20."""
    found = examine(read_design(FILE))
    W = 600.0 * 0.3 * 0.3 * 1.5 * 9.80665
    a = np.radians(20.0)
    q = W * 0.15 / (2.0 * 0.45 * 0.75 * (np.cos(a) + np.sin(a)) * np.cos(a))
    assert found.limits.tipping == pytest.approx(np.sqrt(2.0 * q), rel=1e-6)


def test_surroundings_and_recurrence_are_its_own():
    found = examine(read_design(FILE))
    acts = act_by_exposure(found)
    assert acts["B"] >= 1.6 * acts["C"]
    assert recurrence(30.0, found.design.table(Site)).years == pytest.approx(30.0)


def test_its_faults_come_with_the_others():
    fault = the_fault(FILE.replace("20 m/s", "60 m/s"))
    assert (fault.key, fault.expected) == ("wind", "a wind of the flat book: they end at 50 m/s")


def test_without_it_the_name_is_unknown(monkeypatch):
    monkeypatch.setattr(methods, "STANDARDS", methods.STANDARDS[:-1])
    assert "'EN 1991-1-4'" in the_fault(FILE).expected


def test_tops_and_free_roofs_are_lifted_by_its_own_figure():
    box = Part("box", Box(0.5, 0.4, 0.5, 0.02), density=500.0)
    roof = Part("roof", Plate(Rectangle(0.5, 0.4), 0.02), Place(at=(0, 0, 2)), density=500.0)
    structure = build_structure(plain_design(box, roof))
    found = bare(structure, [None, None], FlatWind(1.0)).suction
    assert found.names == (("roof lifted",), ("suction", "roof lifted"))
    assert found.upward[:, 0] == pytest.approx([3.0 * 0.2, 4.0 * 0.2])
