"""In: a pattern that names another as its base. Out: the two put together, read as any pattern is."""
