// @ts-check
/* Runs before the first paint: what this reader chose, so that nothing changes under the eye.
   The last lines are what the theme's own script expects to find. */
(() => {
  const root = document.documentElement;
  root.classList.replace("no-js", "js");
  /** @param {string} key */
  const kept = (key) => {
    try { return localStorage.getItem(key); } catch { return null; }
  };
  const scheme = kept("downflow.scheme");
  if (scheme === "paper" || scheme === "night") root.dataset.mdColorScheme = scheme;
  root.dataset.units = kept("downflow.units") === "si" ? "si" : "ip";
  if (kept("downflow.open")) root.dataset.job = "open";
})();

var __md_scope = new URL("..", /** @type {HTMLScriptElement} */ (document.currentScript).src);
/** @param {string} text */
var __md_hash = (text) => [...text].reduce((sum, letter) => (sum << 5) - sum + letter.charCodeAt(0), 0);
/** @param {string} key @param {Storage} [store] @param {URL} [scope] */
var __md_get = (key, store, scope = __md_scope) => {
  try { return JSON.parse((store ?? localStorage).getItem(`${scope.pathname}.${key}`) ?? "null"); } catch { return null; }
};
/** @param {string} key @param {unknown} value @param {Storage} [store] @param {URL} [scope] */
var __md_set = (key, value, store, scope = __md_scope) => {
  try { (store ?? localStorage).setItem(`${scope.pathname}.${key}`, JSON.stringify(value)); } catch { /* nothing is kept */ }
};
