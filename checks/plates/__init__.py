"""The strength of what is flat: boards, walls, roofs, decks, cut-outs, all judged as strips.

Read ``strip_beam`` (a beam of several spans), ``strip_strength`` (what a strip carries along and
across its grain) and ``strips`` (one strip, and its judgement); then ``boards``, ``walls``,
``slopes``, ``decks`` and ``cutouts``, which only say which strips run where (``flat_plates`` and
``carried_plate``, ``arms``, ``thrust``, ``lifted_edges`` help them), and ``all_members``.
"""
