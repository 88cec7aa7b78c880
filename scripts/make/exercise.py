"""Run inside the browser's Python while its standard library is being trimmed.

Every module that our code names in an import is kept in any case, also where the import stands
in a function. This adds what the standard library brings in by itself while it works. Ranges
are left out: they are the same work again. The tests ask far more inside the trimmed runtime.
"""

import json

from downflow.bridge import handle
from downflow.calculators import all_calculators


def ask(op, **given):
    return json.loads(handle(json.dumps({"op": op, **given})))


handle("not JSON")
ask("hello")
for name in all_calculators():
    ask("calculator", id=name, job=None, units="si", ranged=False)
ask("plan", job=None, units="ip", ranged=False)
