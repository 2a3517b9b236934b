"""The terms in which books of timber are asked and answer; no book is known here.

Read ``joint_material`` (what a fastener meets in a part), ``driven`` (through what into what, how
far), ``capacity`` (what one fastener holds, as answered), then ``answers``: adjusted values, the
law of sticks, the room that fasteners need, where values stand.
"""
