// Ranks with the site's own files: node find_rank.mjs SITE < queries.json > addresses.json
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const assets = pathToFileURL(`${process.argv[2]}/assets/`);
const { finder } = await import(new URL("find-rank.js", assets).href);
const { default: MiniSearch } = await import(new URL("vendor/minisearch.js", assets).href);
const find = finder(MiniSearch, JSON.parse(readFileSync(new URL("find.json", assets), "utf8")));
const asked = JSON.parse(readFileSync(0, "utf8"));
process.stdout.write(JSON.stringify(asked.map((query) => find(query).map(
  ({ page, parts, score }) => ({ url: page.url, parts: parts.map((part) => part.url), score })))));
