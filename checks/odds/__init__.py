"""How likely a piece tips, slides or comes apart, where what it rests on is known only roughly."""
