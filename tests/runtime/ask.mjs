// Answers questions inside the runtime that ships: one JSON text a line in, one a line out.
//   node ask.mjs FOLDER        FOLDER: the built site's runtime/<hash>
import { readFileSync } from "node:fs";
import { createInterface } from "node:readline";
import { pathToFileURL } from "node:url";

const folder = process.argv[2];
const { loadPyodide } = await import(pathToFileURL(`${folder}/pyodide.mjs`).href);
const py = await loadPyodide({
  indexURL: `${folder}/`,
  stdLibURL: `${folder}/python.zip`,
  packageBaseUrl: `${folder}/`,
  lockFileContents: readFileSync(`${folder}/lock.json`, "utf8"),
});
const handle = py.pyimport("downflow.bridge").handle;
for await (const line of createInterface({ input: process.stdin })) {
  const text = line.startsWith("#") ? JSON.stringify(py.runPython(line.slice(1)) ?? null) : handle(line);
  process.stdout.write(`${text}\n`);
}
