"""Loads: gravity, people, wind by each book, combinations, how often.

Read ``site.py`` first, ``methods.py`` with the face that each book of wind has, and ``exposed.py``,
what a piece offers to the wind from every side; ``actions.py`` turns that into forces. ``lids.py``,
``inside_air.py`` and ``uplift.py`` are about what is closed above, ``boards.py`` and
``shape_coefficients.py`` about level wind. A folder each: ``asce7``, ``en1991``, ``gust``.
"""
