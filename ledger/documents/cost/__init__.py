"""What was made cost, and what all of it is worth."""
