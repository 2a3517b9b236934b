"""The word of the verdict, and what to do about it: what to drive, lay, change or mend.

Read ``verdict_words``, ``what_to_do`` (to hold it), ``mends`` (to hold together, in words) and
``mend_lines`` (in the file), and ``way_words``: the ways between which the page lets one choose.
"""
