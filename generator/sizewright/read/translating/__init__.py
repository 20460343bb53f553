"""In: a source and the words of it in another language, written beside it. Out: the same source in that language."""
