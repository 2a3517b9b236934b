"""The cut list as geometry: which panels, boards, sticks and blocks a piece is sawn from.

Read ``panels`` and ``panelled`` (hollow bodies), ``boards``, ``sticks``, ``blocks`` (the others),
``cut_pieces`` (all of them), ``blanks``, ``nesting`` with ``snug_rows`` and ``lumber_cuts`` (laid
out on what is sold), ``cut_stock``, then ``cut_list``.
"""
