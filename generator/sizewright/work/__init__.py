"""In: a graded pattern. Out: its instructions carried out row by row, for every size."""
