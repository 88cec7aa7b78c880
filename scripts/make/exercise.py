"""Run inside the browser's Python while its standard library is being trimmed.

It calls what a reader may call, so that every standard module that is imported on the way is
seen. The tests run the same and more inside the trimmed runtime.
"""

import json

from downflow import bridge

bridge.handle("not JSON")
for each in json.loads(bridge.handle('{"op": "list"}')).get("calculators", []):
    for op in ("describe", "solve", "render"):
        bridge.handle(json.dumps({"op": op, "id": each["id"]}))
