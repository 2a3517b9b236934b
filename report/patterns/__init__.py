"""The pattern of what is sawn, at full size, for a printer or a machine.

Read ``pattern`` (what is drawn of each sheet), then ``pattern_svg`` and ``pattern_dxf``.
"""
