"""What is written: SQL in, plain rows out, one file a noun."""
