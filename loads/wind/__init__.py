"""The wind at a place, before it meets anything: what a site says, how strong, how often.

Read ``site`` (what is known of a place), ``exposure``, ``dynamic_pressure`` (of a gust), then
``how_often`` (return periods), ``gust_record`` and ``peak_gusts`` (from measured years).
"""
