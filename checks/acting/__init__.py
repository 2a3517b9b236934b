"""What acts on a piece, and what forces that makes within it.

Read ``design_wind`` (the site's wind on the whole), ``local_wind`` (on one part), ``given_loads``,
``borne``, ``people_loads`` and ``point_loads`` (what stands, leans and climbs on it), then
``load_cases``: all of them as cases, of which ``internal_forces`` asks the model.
"""
