"""Where bodies meet, and the one graph of what holds, carries or hangs on what.

Read ``fit`` (how near is touching), ``surfaces``, ``meeting`` (the face of two bodies), ``bed``
(points on it), ``graph`` (all edges), then ``unsupported``, ``holds_down`` and ``look_again``: the
faults and notes that follow from it.
"""
