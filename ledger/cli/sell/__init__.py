"""What leaves: stalls, shops, gifts, and what comes back."""
