"""One rule a module: its docstring is its page, `RULE` names it, `check` finds it."""
