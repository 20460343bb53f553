"""In: nothing. Out: the texts that a new pattern and a new project begin with."""
