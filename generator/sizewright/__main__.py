"""`python -m sizewright` does what the command `sizewright` does."""

from sizewright.command.main import main

main()
