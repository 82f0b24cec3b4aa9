"""What leaves, and what it cost."""
