"""The tables as the writing side sees them, a file a topic; the migrations alone make them in the file."""
