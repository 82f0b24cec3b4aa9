"""The trade itself, pure: no clock, no files, no SQL, no terminal."""
