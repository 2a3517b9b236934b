"""The tables of the design file that fasten and hold: what a person writes of them, as read.

Read ``fastener_key`` (a fastener's name and how it is driven), ``joint_table``, ``seam_table``,
then ``anchor_table``: anchors, ballast and guys.
"""
