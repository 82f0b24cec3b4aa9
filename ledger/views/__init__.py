"""The reading side: one file per question, a frozen dataclass and the SQL that fills it."""
