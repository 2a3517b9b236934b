"""What touches what, and which forces follow: one model of a piece; no strength, no standard.

Read in this order: ``tables`` (what a file says of it) and ``contacts`` (where bodies meet, the
graph), ``model`` (rigid bodies, sticks and springs between them), ``frame`` and ``system``
(stiffness), ``one_way`` (what only presses), ``solution`` (forces and balance), ``wrench`` (a force
with its moment).
"""
