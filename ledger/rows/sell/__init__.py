"""What was sold, promised, priced and charged."""
