"""How anything is said: one way to write a number, a list, a line; messages filled with findings.

Read ``amounts`` and ``remark`` (numbers and lists in a sentence), ``filled`` (a finding and its
message), ``lines`` (rows that fit a screen), ``words`` (directions), ``faults`` (what is wrong
with a file), ``as_read``, ``dates``, ``cells`` and ``fingerprint``.
"""
