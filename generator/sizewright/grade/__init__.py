"""In: a pattern. Out: every quantity of it, exact, for every size."""
