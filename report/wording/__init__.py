"""Words and amounts from which all else is said: one list of messages, one way to write a number.

Read ``messages`` (and those of pages and windows beside it), ``amounts``, ``words``, ``lines``
(rows that fit a screen), ``faults`` (what is wrong with a file), ``fingerprint`` and ``formulas``.
"""
