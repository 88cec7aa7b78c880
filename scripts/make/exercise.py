"""Run inside the browser's Python while its standard library is being trimmed.

It asks what a reader may ask, so that every standard module that is imported on the way is
seen. The tests ask the same and more inside the trimmed runtime.
"""

import json

from downflow.bridge import handle
from downflow.calculators import all_calculators


def ask(op, **given):
    return json.loads(handle(json.dumps({"op": op, **given})))


handle("not JSON")
ask("hello")
for units in ("ip", "si"):
    for name in all_calculators():
        for ranged in (False, True):
            ask("calculator", id=name, job=None, units=units, ranged=ranged)
        ask("answer", id=name, job=None)
    for op in ("plan", "sheet", "measure", "first", "summary"):
        ask(op, job=None, units=units, ranged=False)
    for op in ("record", "papers"):
        ask(op, job=None, units=units, ranged=False)
