"""Designs with a joint or two, short enough to be changed line by line."""

from tower_parts import FOOT_AND_TOWER

TOWER = f"""
[design]
name  = 'A tower on a ring'
units = 'imperial'

[site]
method   = 'forecast'
wind     = '58 mph'
exposure = 'open'
ground   = 'firm lawn'

{FOOT_AND_TOWER}
"""

POST = """
[design]
name  = 'A block on a plank'
units = 'imperial'

[site]
method = 'gust'
wind   = '46 mph'
ground = 'paving'

[[part]]
name      = 'plank'
shape     = 'plate'
length    = '24 in'
width     = '24 in'
thickness = '3/4 in'
material  = 'southern pine'
mass      = '35 lb'                # heavy, so that it does not slide on wet paving

[[part]]
name     = 'block'
shape    = 'box'
on       = 'plank'
length   = '24 in'
width    = '6 in'
height   = '20 in'
material = 'southern pine'

"""
"""The block is solid wood; its grain runs along its longest side, so a nail from below meets it
across the grain."""


def joint(of="tower", to="foot", fastener="8d common nail", count=16, **more):
    """Return a ``[[joint]]`` table; keys given as text stand between quote marks."""
    keys = {"name": f"{of} to {to}", "of": of, "to": to, "fastener": fastener, "count": count}
    lines = [f"{key} = {_toml(value)}" for key, value in (keys | more).items() if value is not None]
    return "\n".join(["[[joint]]", *lines, "", ""])


def _toml(value):
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, list):
        return "[" + ", ".join(_toml(each) for each in value) + "]"
    return f"'{value}'" if isinstance(value, str) else str(value)
