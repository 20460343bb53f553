"""In: what a person types. Out: the stages called, and what they found printed."""
