"""Embedment as the public API offers it: text or quantities in, a quantity out."""

from .... import units
from ....loads.arguments import as_given, flag, si
from .embedment import depth_constrained, depth_free


def embedment(
    lateral_load: str | units.Quantity,
    height: str | units.Quantity,
    lateral_bearing: str | units.Quantity,
    width: str | units.Quantity,
    constrained: bool = False,
) -> units.Quantity:
    """Return how deep a post has to stand in the ground, as a quantity; of arrays, an array.

    ``lateral_load`` is a force that acts level at ``height`` above the ground;
    ``lateral_bearing`` the allowable pressure per depth, such as ``'150 lbf/ft^3'``, doubled
    already where that is allowed; ``width`` the diameter of a round post or the diagonal of a
    square one. ``constrained``: a rigid floor or pavement holds the post at the surface.

    The pressure is that at a third of the depth found, or at the full depth when constrained,
    counted to 12 ft. ValueError names the argument, what was found and what is expected.
    Source: IBC 2012-2021 1807.3.2.1 and 1807.3.2.2, Eq. 18-1 to 18-3.

    >>> depth = yf.embedment("200 lbf", "4 ft", "150 lbf/ft^3", "4 in", constrained=True)
    >>> print(f"{depth.to('ft'):.2f}")
    4.08 foot
    """
    P, h = si("lateral_load", lateral_load, "force"), si("height", height, "length")
    s = si("lateral_bearing", lateral_bearing, "lateral bearing", above_zero=True)
    b = si("width", width, "length", above_zero=True)
    held = flag("constrained", constrained)
    d = depth_constrained(P * h, s, b) if held else depth_free(P, h, s, b)
    return units.quantity(as_given(d), "length")
