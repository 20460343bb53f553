"""The arithmetic of garments: plans of shaping, each with its numbers and the sentence a reader knits from."""
