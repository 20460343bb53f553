"""In: lines of instructions in the trade's written notation. Out: their trees; nothing is carried out here."""
