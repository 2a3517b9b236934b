"""Every shape against a mesh cut by planes (manifold3d), an independent geometry library."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from meshes import blades_of, filled, mesh_of, placed, projected, volume_and_centre

from yardfast.design.outlines import outlines
from yardfast.design.placing import Body, about_z, toward_y
from yardfast.design.shapes.ball import Ball
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.cone import Cone
from yardfast.design.shapes.cutout import Cutout
from yardfast.design.shapes.flat import Frame, Panel, Plate
from yardfast.design.shapes.gables import Gable
from yardfast.design.shapes.hoop import Hoop
from yardfast.design.shapes.member import Member
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.shapes.roofs import Dome, Vault
from yardfast.design.shapes.rotor import Rotor
from yardfast.design.shapes.turned import Turned

SHAPES = {
    "octagonal tower": Shell(8, 0.4, 0.23, 1.2, 0.019),
    "straight hexagon": Shell(6, 0.3, 0.3, 0.5, 0.012),
    "flared triangle": Shell(3, 0.3, 0.5, 0.4, 0.02),
    "pentagon whose walls meet inside": Shell(5, 0.4, 0.02, 0.3, 0.03),
    "flared square whose walls meet inside": Shell(4, 0.02, 0.4, 0.3, 0.03),
    "round tower": Shell(0, 0.5, 0.3, 1.0, 0.02),
    "hexagonal post": Solid(6, 0.3, 0.3, 1.2),
    "tapered heptagon": Solid(7, 0.3, 0.1, 1.2),
    "pointed post": Solid(4, 0.1, 0.0, 0.1),
    "round post": Solid(0, 0.2, 0.15, 1.4),
    "octagonal roof": Cone(8, 0.3, 0.23, 0.012),
    "filled pyramid": Cone(4, 0.3, 0.2),
    "round roof": Cone(0, 0.6, 0.3, 0.02),
    "solid box": Box(0.5, 0.3, 0.2),
    "closed box": Box(1.2, 1.2, 0.75, 0.019),
    "open-topped box": Box(0.9, 0.4, 0.5, 0.02, frozenset({"top"})),
    "box open front and bottom": Box(0.9, 0.4, 0.5, 0.02, frozenset({"front", "bottom"})),
    "tapered box": Box(0.9, 0.6, 0.5, 0.02, frozenset(), 0.5, 0.3),
    "tapered box open to the right": Box(0.9, 0.6, 0.5, 0.02, frozenset({"right"}), 0.5, 0.3),
    "hip roof": Box(0.9, 0.6, 0.3, None, frozenset(), 0.4, 0.0),
    "hollow hip roof": Box(0.9, 0.6, 0.3, 0.015, frozenset({"bottom"}), 0.4, 0.0),
    "filled gable": Gable(1.0, 0.8, 0.4),
    "two slopes": Gable(1.0, 0.8, 0.4, 0.019),
    "deck": Plate(Regular(8, 0.43), 0.019),
    "deck with a hole": Plate(Regular(6, 0.43), 0.019, 0.2),
    "round deck": Plate(Regular(0, 0.43), 0.019, 0.1),
    "board": Plate(Rectangle(1.2, 0.3), 0.03),
    "octagonal foot": Frame(Regular(8, 0.5), 0.089, 0.038),
    "rectangular foot": Frame(Rectangle(1.0, 0.6), 0.089, 0.038),
    "round foot": Frame(Regular(0, 0.6), 0.1, 0.04),
    "sign": Panel(1.2, 0.6, 0.018),
    "ball": Ball(0.15),
    "hollow ball": Ball(0.3, 0.02),
    "gambrel": Gable(1.0, 0.8, 0.5, 0.019, 0.5, 0.3),
    "filled gambrel": Gable(1.0, 0.8, 0.5, None, 0.5, 0.35),
    "plumb post": Member((0.1, 0.0, 0.0), (0.1, 0.0, 1.2), 0.089, 0.038),
    "rail": Member((-0.5, 0.2, 0.8), (0.5, 0.2, 0.8), 0.038, 0.089),
    "brace cut plumb": Member((0.0, 0.0, 0.2), (0.4, 0.3, 0.9), 0.05, 0.09, cut="plumb"),
    "leg cut level": Member((0.4, 0.3, 0.0), (0.1, 0.0, 1.1), 0.05, 0.09, cut="level"),
    "leaning stick": Member((0.4, 0.3, 0.1), (0.1, 0.0, 1.1), 0.05, 0.09),
    "square tube": Member((0.0, 0.0, 0.0), (0.0, 0.0, 1.0), 0.05, 0.05, wall=0.003),
    "leaning pole": Member((0.4, 0.3, 0.1), (0.1, 0.0, 1.1), across=0.06),
    "pole cut level": Member((0.4, 0.3, 0.0), (0.1, 0.0, 1.1), across=0.06, cut="level"),
    "pipe": Member((-0.5, 0.0, 0.5), (0.5, 0.1, 0.6), across=0.06, wall=0.004),
    "dome": Dome(0.6, 0.2, 0.02),
    "half ball": Dome(0.6, 0.3),
    "vault": Vault(0.6, 0.3, 0.25, 0.01),
    "half round": Vault(0.6, 0.3, 0.15),
    "baluster": Turned(((0.05, 0), (0.05, 0.04), (0.03, 0.04), (0.02, 0.3), (0.06, 0.4), (0, 0.5))),
    "top on its point": Turned(((0.0, 0.0), (0.1, 0.15), (0.04, 0.15), (0.04, 0.2))),
    "hoop": Hoop(0.3, Regular(0, 0.03)),
    "hoop of pipe": Hoop(0.3, Regular(0, 0.05), 0.004),
    "hoop of a flat strip": Hoop(0.3, Rectangle(0.006, 0.05)),
    "hoop with six sides": Hoop(0.3, Regular(6, 0.04)),
    "hoop with three sides": Hoop(0.3, Regular(3, 0.04)),
    "sawn bird": Cutout(
        ((0, 0), (0.3, 0), (0.25, 0.3), (0.5, 0.6), (0.2, 0.5), (0.1, 0.9), (0.02, 0.5)),
        0.018,
        (((0.1, 0.1), (0.2, 0.1), (0.15, 0.2)),),
    ),
}

LEANS = {
    "leaning sign": Panel(1.2, 0.6, 0.018),
    "leaning octagon": Shell(8, 0.4, 0.23, 1.2, 0.019),
    "leaning round": Solid(0, 0.4, 0.3, 0.8),
    "leaning dome": Dome(0.6, 0.2, 0.02),
    "leaning bird": SHAPES["sawn bird"],
    "leaning pole": SHAPES["leaning pole"],
    "leaning ball": Ball(0.3),
    "leaning baluster": SHAPES["baluster"],
}


@pytest.mark.parametrize("name", LEANS)
def test_a_leaning_mirrored_part_is_that_of_the_mesh(name):
    mirrored = np.diag([-1.0, 1.0, 1.0])
    body = Body(0, 0, LEANS[name], mirrored @ about_z(0.7) @ toward_y(0.4), np.array([0.1, 0, 0.5]))
    moments = body.shape.moments()
    mesh = placed(body)
    volume, centre = volume_and_centre(mesh)
    assert moments.volume == pytest.approx(volume, rel=1e-4)
    assert body.place(moments.first / moments.volume) == pytest.approx(centre, abs=1e-4)
    low, high = body.extent
    assert (*low, *high) == pytest.approx(placed(body, filled).bounding_box(), abs=3e-4)
    azimuths = np.array([0.3, 1.9, 4.0])
    mesh = placed(body, filled)
    for azimuth, ours in zip(azimuths, outlines([body], azimuths)[0], strict=True):
        theirs = _filled(projected(mesh, azimuth))
        assert ours.area == pytest.approx(theirs.area, rel=1e-3)
        assert ours.symmetric_difference(theirs).area <= 3e-3 * theirs.area


@pytest.mark.parametrize("name", SHAPES)
@pytest.mark.parametrize("turn", [0.0, 0.37])
def test_volume_and_centre_are_those_of_the_mesh(name, turn):
    body = Body(0, 0, SHAPES[name], about_z(turn), np.array([0.3, -0.2, 0.1]))
    moments = body.shape.moments()
    mesh = placed(body)
    volume, centre = volume_and_centre(mesh)
    assert moments.volume == pytest.approx(volume, rel=1e-4)
    extent = max(mesh.bounding_box()[3:])
    assert body.place(moments.first / moments.volume) == pytest.approx(centre, abs=1e-4 * extent)


@pytest.mark.parametrize("name", SHAPES)
def test_outline_is_that_of_the_mesh(name):
    azimuths = np.array([0.0, 0.4, 1.3, 2.9, 4.4])
    body = Body(0, 0, SHAPES[name], about_z(0.21), np.array([0.3, -0.2, 0.1]))
    mesh = placed(body, filled)
    for azimuth, ours in zip(azimuths, outlines([body], azimuths)[0], strict=True):
        theirs = _filled(projected(mesh, azimuth))
        assert ours.area == pytest.approx(theirs.area, rel=1e-3)
        assert ours.symmetric_difference(theirs).area <= 2e-3 * theirs.area


WHEELS = {
    "four plain blades": Rotor(4, 0.5, 0.1, 0.2, 0.012, 0.0),
    "three pitched blades facing north-east": Rotor(3, 0.4, 0.05, 0.12, 0.01, 0.8, 1.0, 0.3),
    "one blade": Rotor(1, 0.4, 0.05, 0.12, 0.01, 2.0),
}


@pytest.mark.parametrize("name", WHEELS)
def test_wheel_adds_blade_by_blade_and_shows_their_union(name):
    wheel = WHEELS[name]
    body = Body(0, 0, wheel, about_z(0.5), np.array([0.1, 0.2, 1.0]))
    blades = [
        m.rotate((0, 0, np.degrees(0.5))).translate((0.1, 0.2, 1.0)) for m in blades_of(wheel)
    ]
    each = [volume_and_centre(blade) for blade in blades]
    volume = sum(v for v, _ in each)
    centre = sum(v * c for v, c in each) / volume
    moments = wheel.moments()
    assert moments.volume == pytest.approx(volume, rel=1e-6)
    assert body.place(moments.first / moments.volume) == pytest.approx(centre, abs=1e-6)
    for azimuth in (0.0, 0.9, 2.2):
        union = shapely.union_all([projected(blade, azimuth) for blade in blades])
        ours = outlines([body], np.array([azimuth]))[0, 0]
        assert ours.area == pytest.approx(union.area, rel=1e-6)


@pytest.mark.slow
@settings(max_examples=40, deadline=None)
@given(
    sides=st.sampled_from([0, 3, 4, 5, 6, 7, 8, 9, 12]),
    bottom=st.floats(0.1, 1.0),
    ratio=st.floats(0.2, 2.0),
    height=st.floats(0.1, 2.0),
    wall=st.floats(0.01, 0.2),
)
def test_any_taper_of_a_shell_has_the_volume_of_the_mesh(sides, bottom, ratio, height, wall):
    shell = Shell(sides, bottom, bottom * ratio, height, wall * min(bottom, bottom * ratio))
    volume, centre = volume_and_centre(mesh_of(shell))
    moments = shell.moments()
    assert moments.volume == pytest.approx(volume, rel=2e-4)
    assert moments.first[2] / moments.volume == pytest.approx(centre[2], rel=2e-4)


def _filled(region):
    """The same without holes: for the silhouette a part is filled."""
    return shapely.union_all([shapely.Polygon(p.exterior) for p in shapely.get_parts(region)])
