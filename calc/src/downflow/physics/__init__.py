"""Physics: pure functions on numbers, units in their names, sources in their docstrings."""
