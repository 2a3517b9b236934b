"""What is said of joints, seams, fasteners and what has to be bought and cut for them.

Read ``joint_words`` and ``joint_advice``, ``fastened_seams`` and ``seam_words``, then
``fastener_words``, ``spacing_words``, ``hardware_words`` and ``cut_words``.
"""
