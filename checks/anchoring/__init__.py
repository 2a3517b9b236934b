"""What holds a piece down: anchors, guys, weight, and posts in the ground."""
