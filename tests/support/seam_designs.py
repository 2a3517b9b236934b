"""Designs of many-sided shells whose seams are fastened, short enough to be changed."""

from joint_designs import TOWER


def seam(part="tower", fastener="#8 wood screw 2 in", spacing="8 in", cleat="redwood", **more):
    """Return a ``[[seam]]`` table; text stands between quote marks, None is left out."""
    keys = {"part": part, "fastener": fastener, "spacing": spacing, "cleat": cleat} | more
    lines = [f"{key} = {_toml(value)}" for key, value in keys.items() if value is not None]
    return "\n".join(["[[seam]]", *lines, "", ""])


def tower(wind="58 mph"):
    """Return the tower on a ring in a wind."""
    return TOWER.replace("58 mph", wind)


def _toml(value):
    return str(value).lower() if isinstance(value, bool) else f"'{value}'"
