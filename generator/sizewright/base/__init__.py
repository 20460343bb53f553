"""What every stage rests on: places, findings, rules, exact quantities and the words numbers are printed with."""
