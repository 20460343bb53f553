"""In: proofed results. Out: the written site: pages, PDFs, feed and data files."""
