// Work that must happen inside the very Python that ships to the browser.
//   node runtime.mjs compile  TOOLS FOLDER             byte-compile the zip files in FOLDER, in place
//   node runtime.mjs trace    ZIP IMPORTS OUT          which files of ZIP a working calculator touches
//   node runtime.mjs snapshot ZIP LOCK OUT             memory of the runtime, calculators imported
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, resolve } from "node:path";
import { pathToFileURL } from "node:url";

const require = createRequire(pathToFileURL(`${process.env.DOWNFLOW_MODULES}/`));
const runtime = dirname(require.resolve("pyodide/package.json"));
const [task, ...args] = process.argv.slice(2);

// The same memory on every run: a fixed clock, a fixed source of chance, a fixed hash seed.
function freeze() {
  const time = 1_600_000_000_000;
  Date.now = () => time;
  performance.now = () => 0;
  const same = (array) => {
    new Uint8Array(array.buffer, array.byteOffset, array.byteLength).fill(7);
    return array;
  };
  globalThis.crypto.getRandomValues = same;
  require("node:crypto").randomFillSync = same;
}

async function boot(options = {}) {
  const { loadPyodide } = await import(pathToFileURL(`${runtime}/pyodide.mjs`).href);
  return loadPyodide({ indexURL: `${runtime}/`, env: { PYTHONHASHSEED: "0", HOME: "/home/web" }, ...options });
}

async function compile(tools, folder) {
  const py = await boot();
  py.FS.mkdirTree("/tools");
  py.mountNodeFS("/tools", resolve(tools));
  py.FS.mkdirTree("/in");
  py.mountNodeFS("/in", resolve(folder));
  py.runPython(`
import glob, sys
sys.path[:0] = sorted(glob.glob("/tools/*.whl"))
from pyodide_build.cli.py_compile import main
main.main(args=["--silent", "--compression-level", "0", "/in"], standalone_mode=False)
`);
}

async function trace(zip, imports, out) {
  const py = await boot({ stdLibURL: resolve(zip) });
  py.globals.set("wanted_json", readFileSync(imports, "utf8"));
  writeFileSync(out, py.runPython(`
import importlib, json, sys
missing = []
for name in json.loads(wanted_json)["modules"]:
    try:
        importlib.import_module(name)
    except ImportError as error:
        missing.append(f"{name}: {error}")
exec(json.loads(wanted_json)["exercise"], {"__name__": "exercise"})
files = set()
for module in list(sys.modules.values()):
    spec = getattr(module, "__spec__", None)
    path = getattr(module, "__file__", None) or getattr(spec, "origin", None) or ""
    if ".zip/" in path:
        inner = path.split(".zip/", 1)[1]
        files.add(inner if inner.endswith(".pyc") else inner + "c")
json.dumps({"files": sorted(files), "missing": missing})
`));
}

async function snapshot(zip, lock, out) {
  freeze();
  const py = await boot({
    stdLibURL: resolve(zip),
    lockFileContents: readFileSync(lock, "utf8"),
    packageBaseUrl: `${runtime}/`,
    _makeSnapshot: true,
  });
  py.runPython(readFileSync(new URL("warm.py", import.meta.url), "utf8"));
  writeFileSync(out, py.makeMemorySnapshot());
}

try {
  await { compile, trace, snapshot }[task](...args);
  process.exit(0);
} catch (error) {
  // The message alone: Node would show the runtime's one line of a million characters with it.
  process.stdout.write(`${String(error.message ?? error).slice(-6000)}\n`, () => process.exit(1));
}
