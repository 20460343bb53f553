"""The tech editor's proof sheet: where every number of a pattern comes from, as a page and for a spreadsheet."""
