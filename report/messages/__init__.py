"""Every message that people read, each with its slots, and the words of the checks in theirs.

Read ``messages`` (the verdict, what to do, what to mend), ``check_messages`` and
``assumed_messages`` (beside a check), ``page_messages`` (on paper), ``window_messages`` (in a
browser), ``terms`` (words of the checks for which people have others) and ``formulas``.
"""
