"""One file for each command, with the function ``run`` that does it and returns its exit status.

Each is imported only where it was typed (``cli/command_table.py``); ``catalogue`` is ``check`` of
many files, ``listing`` both tables of names.
"""
