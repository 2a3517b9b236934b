"""Wind as a gust: at the piece itself, or as forecasts and warnings state it."""
