"""The strength of sticks: posts, beams, arms, braces, legs, rings of lumber; and of blades.

Read ``member_check`` (what is found of any part), ``uprights`` (sections) and ``bending``, then
``post_strength`` with ``columns``, ``torsion`` and ``metal_strength`` (what a section carries),
``governs`` (which use is the most) and ``stick_strength``: all sticks, by the model's forces.
"""
