"""What the ground and each anchor hold, as relations of arrays.

Read ``buried_weight`` (a cone or block of soil), ``screw_anchors``, ``stakes``, ``deadman``,
``slab_bolts``, ``embedment`` (posts), ``ballast``, and ``anchor_capacity``: the one that an anchor
of the file is asked; ``public_ground`` is the public door.
"""
