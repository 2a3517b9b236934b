"""How much wind a shape takes: force coefficients of sections, signs, boards and wheels.

Read ``force_coefficients`` (sections), ``signs`` (boards and lattices), ``rotor`` (wheels of
blades), ``boards`` (which boards are one), ``shape_coefficients`` (which of them a body takes),
``shielding`` (behind another). A book with its own goes by its own folder.
"""
