"""In: graded and worked patterns. Out: drawings, as SVG."""
