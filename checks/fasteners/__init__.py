"""Fasteners as the file has them: where each nail, screw and bolt stands, and what it meets.

Read ``fastener_layout`` and ``fastener_points`` (where), ``fastener_sets`` (how driven, one joint),
``joint_places`` (all of them, for every copy) and ``joint_faults``; then ``wood_around``,
``spacing`` and ``splitting`` (the room they have), and ``ties``: what the model makes of them.
"""
