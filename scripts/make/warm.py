"""Run inside the browser's Python before its memory is kept: import what a first answer needs.

Nothing made here may hold a JavaScript object, and nothing may depend on chance or the clock.
"""

import gc

import downflow.bridge

downflow.bridge.handle('{"op": "list"}')
gc.collect()
