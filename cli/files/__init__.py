"""Files that commands read and write: whole or not at all, and never over one unasked.

Read ``designs`` and ``design_files`` (what was named), ``own_files``, ``written`` and ``writing``
(how a file is written), then what goes into one: ``changed_text``, ``added_holding`` and ``lines``
(a design file as people wrote it, changed), ``varied``, ``cuts_file``, ``pictures``.
"""
