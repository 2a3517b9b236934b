"""What of a piece the wind sees from each side, and what stands behind something else.

Read ``directions`` (from where), ``visible`` (areas), ``depth`` (where bodies
stand alone), ``hiding`` (what hides what), ``connected`` (what touches), ``sheltering``.
"""
