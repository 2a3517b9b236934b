"""The point mass."""

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from .forms import Form, Mote
from .hulls import NO_HULLS, Hull, Moments
from .shape import SizedShape


class Weight(SizedShape, frozen=True):
    """A point mass without volume or wind area, at its place."""

    stands = False
    has_foot = False
    is_point = True

    def moments(self) -> Moments:
        """Return nothing: its mass is given, not worked out."""
        return Moments(0.0, np.zeros(3))

    def hulls(self) -> tuple[Hull, ...]:
        """Return nothing."""
        return NO_HULLS

    def contact(self) -> BaseGeometry:
        """Return nothing: it stands on other parts."""
        return shapely.Polygon()

    def as_form(self) -> Form:
        """Return nothing that the wind meets."""
        return Mote()
