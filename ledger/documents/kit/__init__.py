"""What the others are made with."""
