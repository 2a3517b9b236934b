"""The recipe of DEVELOPERS.md for a shape, followed in a copy of the house: four files."""

import json

import pytest
from recipes import changed, house, ran

from yardfast.design.shapes.shape import Shape

DRUM = '''"""A drum: a solid round body."""

from math import pi

import numpy as np
from shapely.geometry.base import BaseGeometry

from .forms import Form, Prism
from .hulls import NO_HULLS, Disc, Hull, Moments
from .plans import Regular
from .shape import SizedShape


class Drum(SizedShape, frozen=True):
    """A solid round body, ``across`` and ``height`` in m."""

    across: float
    height: float

    fills_space = True

    def moments(self) -> Moments:
        """Return pi/4 d2 h at mid-height."""
        volume = pi / 4.0 * self.across**2 * self.height
        return Moments(volume, np.array([0.0, 0.0, volume * self.height / 2.0]))

    def hulls(self) -> tuple[Hull, ...]:
        """Return itself between two circles."""
        radius = self.across / 2.0
        return (Hull(discs=(Disc((0.0, 0.0, 0.0), radius), Disc((0.0, 0.0, self.height), radius))),)

    def cavities(self) -> tuple[Hull, ...]:
        """Return nothing."""
        return NO_HULLS

    def contact(self) -> BaseGeometry:
        """Return its underside."""
        return Regular(0, self.across).polygon()

    def from_above(self) -> BaseGeometry:
        """Return its outline from above."""
        return Regular(0, self.across).polygon()

    def bearings(self) -> tuple[float, ...]:
        """Return nothing."""
        return ()

    def as_form(self) -> Form:
        """Return a round prism."""
        return Prism(Regular(0, self.across))
'''

BUILD = '''"""How the keys of a drum become it."""

from ..reader.row import Row
from ..shapes.drum import Drum
from ..shapes.shape import Shape


def build_drum(row: Row) -> Shape | None:
    """Return a drum, or None with its faults recorded."""
    row.need("across", "height")
    across, height = row.quantity("across"), row.quantity("height")
    return Drum(across, height) if across is not None and height is not None else None
'''

IN_KEYS = (
    ("from .roof_builds", "from .drum_build import build_drum\nfrom .roof_builds"),
    ("from ..shapes.flat import", "from ..shapes.drum import Drum\nfrom ..shapes.flat import"),
    (
        '    "weight": ',
        '    "drum": ShapeSpec(_lengths("across", "height"), build_drum),\n    "weight": ',
    ),
    ("    | Weight\n", "    | Drum\n    | Weight\n"),
)

IN_WORDS = (
    (
        "from ...design.shapes.f",
        "from ...design.shapes.drum import Drum\nfrom ...design.shapes.f",
    ),
    (
        "        case Weight():",
        '        case Drum(across, height):\n            return f"drum {length(across)} across, '
        '{length(height)} high"\n        case Weight():',
    ),
)

DESIGN = """\
[design]
name = 'Drum by the quay'
units = 'imperial'
[site]
method = 'forecast'
wind = '58 mph'
exposure = 'open'
ground = 'firm lawn'
[[part]]
name = 'drum'
shape = '{shape}'
{keys}
material = 'concrete'
"""

ASKED = """\
import json, sys
import yardfast as yf
from yardfast.checks.examination import examine
from yardfast.report.wording.amounts import Amounts
from yardfast.report.wording.as_read import as_read
one, other = (yf.read(path) for path in sys.argv[1:3])
lines = [line.text for line in as_read(examine(one).structure, Amounts(False))]
results = [
    [(check["name"], check["utilization"]) for check in yf.check(each).to_dict()["checks"]]
    for each in (one, other)
]
print(json.dumps([yf.__file__, " ".join(lines), *results]))
"""


@pytest.mark.slow
def test_a_shape_takes_four_files(tmp_path):
    """A drum is a round solid: what is found of it is what is found of that."""
    copy = house(tmp_path)
    (copy / "design" / "shapes" / "drum.py").write_text(DRUM, encoding="utf-8")
    (copy / "design" / "builds" / "drum_build.py").write_text(BUILD, encoding="utf-8")
    changed(copy / "design" / "builds" / "shape_keys.py", IN_KEYS)
    changed(copy / "report" / "wording" / "as_read.py", IN_WORDS)
    drum, solid = tmp_path / "drum.toml", tmp_path / "solid.toml"
    drum.write_text(DESIGN.format(shape="drum", keys="across = '20 in'\nheight = '30 in'"))
    keys = "sides = 0\nbottom = '20 in'\ntop = '20 in'\nheight = '30 in'"
    solid.write_text(DESIGN.format(shape="solid", keys=keys))
    done = ran(tmp_path, "-c", ASKED, str(drum), str(solid))
    assert done.returncode == 0, done.stderr
    where, said, ours, theirs = json.loads(done.stdout)
    assert where.startswith(str(copy))
    assert "drum 20 in across, 2 ft 6 in high" in said
    assert [name for name, _ in ours] == [name for name, _ in theirs]
    assert [used for _, used in ours] == pytest.approx([used for _, used in theirs], rel=1e-12)


def test_a_shape_that_leaves_an_answer_out_cannot_be_made():
    class Mute(Shape):
        pass

    with pytest.raises(TypeError, match="abstract"):
        Mute()
