"""An eight-sided tower on a ring of lumber: the text of its parts, to be changed line by line."""

FOOT_AND_TOWER = """\
[[part]]
name     = 'foot'
shape    = 'frame'
sides    = 8
across   = '24 in'
lumber   = '2x6 flat'
material = 'southern pine, treated'

[[part]]
name     = 'tower'
shape    = 'shell'
on       = 'foot'
sides    = 8
bottom   = '18 in'
top      = '10 in'
height   = '48 in'
wall     = '3/4 in'
material = 'softwood plywood'
"""
