"""How the keys of a shape become it, kind by kind.

Read ``sizes`` (widths over flats, sides or points) and ``stock`` (what is sold as), then a file of
builds (``shape_builds``, ``round_builds``, ``roof_builds``, ``member_build``, ``cutout_build`` with
``drawn_outline``), last ``shape_keys``: all shapes with their keys, the closed list.
"""
