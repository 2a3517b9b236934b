"""The design file and the structure that it describes: parts, shapes, places, mass, outlines.

Read ``model.py``, what a file becomes, ``placing.py``, which puts parts where they stand, and
``structure.py``, what stands then; ``outlines.py`` is what is seen of it, ``plane.py`` knows plane
figures. Beneath them ``shapes``; above them ``reader`` (strict text), ``builds``
(keys to shapes), ``file`` (its tables; ``file/document.py`` reads a design) and ``cutting``
(what has to be sawn). No wind.
"""
