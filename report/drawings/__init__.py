"""Drawings: what is seen of a piece, on paper by the millimetre, as SVG, DXF and in letters.

Read ``seen`` (areas and edges), ``paper`` (marks), ``drawing_scale``, ``drawing_elevation`` and
``drawing_plan``, then ``drawing`` (all on one sheet), ``page_views`` and ``picture``.
"""
