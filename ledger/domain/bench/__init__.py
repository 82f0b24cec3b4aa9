"""A batch, from the plan to the cut."""
