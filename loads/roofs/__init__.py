"""What wind does to tops, lids and roofs: suction, and what presses on free roofs.

Read ``lids`` (what closes what), ``inside_air``, ``roof_planes`` and ``roof_wind`` (free roofs),
``overhangs``, ``local_pressure``, ``tops`` (the face of the books' figures), then ``uplift``.
"""
