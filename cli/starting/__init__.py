"""A starting file: the kinds of piece of ``new``, what is asked of each, and how it is written.

Read ``pieces`` (a kind and its file in ``cli/pieces/``), ``questions``, ``answers`` with
``answer_kinds`` and the files of answers, ``expressions`` (sizes that follow) and ``templates``;
``size_kind`` finds the sizes of a kind for a wind.
"""
