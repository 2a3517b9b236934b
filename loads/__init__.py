"""Loads: gravity, people, wind by each book, combinations, how often.

Read ``wind`` (a place), ``coefficients`` (a shape), ``seen`` and ``roofs`` (a piece), each a
folder; then, a folder each, the books of wind ``asce7``, ``en1991`` and ``gust``, with one face in
``methods.py``. ``exposed.py`` is what a piece offers to the wind from every side, ``actions.py``
turns that into forces. ``printed`` is how tables are read.
"""
