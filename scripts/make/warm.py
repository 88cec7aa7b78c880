"""Run inside the browser's Python before its memory is kept: import what a first answer needs.

Nothing made here may hold a JavaScript object, and nothing may depend on chance or the clock.
"""

import gc
import json

from downflow.bridge import handle
from downflow.calculators import all_calculators

handle('{"op": "hello"}')
for name in all_calculators():
    handle(json.dumps({"op": "calculator", "id": name, "job": None, "units": "ip",
                       "ranged": False}))
gc.collect()
