"""Size-graded knitting patterns: read, graded, worked row by row, proofed and published.

The stages and the direction in which data flows between them are in DEVELOPERS.md.
"""
