"""What is stated beside the checks, as data: what was assumed, left out, known from memory.

Read ``assumed`` and ``assumed_parts``, ``governed`` and ``governed_parts``, ``cautions``,
``from_memory``, ``cited``, ``hardware`` (what has to be bought), ``one_degree`` of slope,
``surroundings`` (the gust to act at elsewhere), ``worked`` (a check step by step) and ``compared``
(by several books, or two pieces). What a screen or paper says of one matter: ``planted``,
``starts``, ``proof``, ``shown_checks``, ``shortfalls``; of a listing ``listing``.
"""
