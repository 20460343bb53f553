"""The tester's sheet: what a test knitter of one size should have at each stage, with boxes for what came of it."""
