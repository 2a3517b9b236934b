"""The shapes: what each is, and all that others ask of one.

Read ``shape.py`` first, the questions that every shape answers, and ``forms.py``, the few forms
that they have; then a plain one (``ball.py``, ``bodies.py``). ``plans.py`` has outlines in plan,
``prism.py`` volumes, ``slopes.py`` what roofs share, ``edges.py`` what bounds a convex piece. Their
keys and the closed list: ``design/builds/shape_keys.py``.
"""
