"""How likely a piece tips, slides or comes apart, where what it rests on is known only roughly.

``checks/spread.py`` says what varies. Read ``sampling`` (points) and ``varied`` (factors), then
``weights``, ``gives`` and ``tipping`` (what gives way, of many pieces at once), ``joints_give``,
``shares`` (which input matters most) and ``odds``: all of it.
"""
