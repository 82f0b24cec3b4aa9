"""Published figures as data, each with its source, and where the shipped files are found."""
