"""What leaves: stalls, and what comes back."""
