"""In: the edges of a piece. Out: its outline, exact, with the lines its measurements are taken along."""
