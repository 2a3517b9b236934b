"""The design file and the structure that it describes: parts, shapes, places, mass, outlines.

Read ``document.py`` first, which reads a file, ``model.py``, what it becomes, and ``structure.py``,
what stands then. ``row.py``, ``kinds.py`` and ``scan.py`` are the strict reader, ``part_table.py``
and ``shape_keys.py`` its part; ``placing.py`` puts parts where they stand, ``outlines.py`` is what
is seen of them, ``plane.py`` plane figures; ``cut_list.py`` what has to be sawn. No wind.
"""
