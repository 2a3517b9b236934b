"""Joints: what each fastener is asked under all load cases, and what it holds.

Read ``combined`` (pull and push at once), ``most_used`` (the fastener that governs) and
``joint_check``; ``joint_sizing`` and ``larger_fasteners`` try what would hold, by that same check.
"""
