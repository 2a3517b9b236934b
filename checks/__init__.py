"""Overturning, sliding, bearing and anchoring, and what follows from them.

Read ``judged/`` (a check and its ratio), ``stability/`` and ``anchoring/`` (how it stands and what
holds it), ``timber/`` and ``fasteners/``, ``situation`` and ``acting/`` (what acts on it and within
it), ``joints/``, ``members/``, ``plates/`` and ``seams/``, then ``examination`` (all of it) and
``verdict``; ``sizing/``, ``odds/`` and ``stated/`` ask those.
"""
