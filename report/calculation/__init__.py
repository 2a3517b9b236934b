"""The calculation sheet for an engineer: each check step by step, with its formula and its source.

Read ``calculation_wind`` and ``calculation_steps`` (the lines of a step), ``calculation_checks``,
``calculation_holding``, then ``calculation`` (the whole) and ``explained`` (one check alone).
"""
