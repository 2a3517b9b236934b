"""Words for people, drawings and data for programs: text is made here only.

Read ``messages`` and ``wording`` (what all share), ``fastening``, ``told`` and ``advice``
(sentences by matter), ``drawings`` and ``patterns``, then what is handed over: ``screens``,
``data``, ``calculation`` and ``printed`` (``templates``).
"""
