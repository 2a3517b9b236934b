"""The calculation sheet for an engineer: each check step by step, with its formula and its source.

Read ``calculation_steps`` (a check's lines), ``calculation_checks``, ``calculation_holding``, then
``calculation`` (the whole) and ``explained`` (one check on the screen).
"""
