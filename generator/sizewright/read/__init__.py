"""In: the text of a project. Out: patterns, pages and tables as trees, every node with its place; nothing evaluated."""
