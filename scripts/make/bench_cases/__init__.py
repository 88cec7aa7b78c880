"""What `scripts/bench` measures: one module a case, each with `measure(bench)` yielding rows."""
