// @ts-check
/* Which page a query means. No page and no browser is needed here, so that a test ranks with
   the very same lines. What forgives:
     letters    capitals, accents, a plural, one wrong letter in five, half a word
     spaces     "lineset" is "line set", "p-trap" is "p trap"
     words      what else people call it (scripts/data/find_words.json, `words:` of a page)
   Title counts more than such a word, that more than a heading or a step, that more than the
   summary, and the rest of the page's words least. A page that answers all of the query goes
   before one that answers a part of it. */

/** @typedef {{kind: string, title: string, url: string, phase?: string, summary?: string,
 *    words?: string[], text?: string, of?: number}} Entry   a page, or with `of` a part of one
 *  @typedef {{entries: Entry[], same: Record<string, string>}} Index
 *  @typedef {{page: Entry, parts: Entry[], score: number}} Found
 *  @typedef {{id: number, score: number, match: Record<string, string[]>, queryTerms: string[]}} Hit */

const BOOST = { title: 6, words: 4, headings: 2, summary: 1, text: 0.4 };
const FUZZY = 0.2;
const WHOLE_PHRASE = 1.6;
const VERY_TITLE = 4;
/* All of the query in one step or heading is worth more than its words here and there. */
const ONE_PLACE = 2;
const PARTS_SHOWN = 2;
const JOINED_FIELDS = new Set(["title", "words"]);

/* Words that say nothing of what is meant, English and Spanish. */
const EMPTY = new Set((
  "a an the of to in on at for from by with and or is are am was be been do does did it its i im my me we our you "
  + "your they them their this that these there what which how when where who why can could will would should "
  + "shall may have has had get got if as so not dont doesnt isnt just s t "
  + "el la los las un una unos unas de del en y o es se por para con que como cuando mi mis me su sus lo le al "
  + "esta estan este hay muy").split(" "));

/** Capitals, accents and signs taken off.
 *  @param {string} text */
function plain(text) {
  return text.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase().replace(/['’]/g, "")
    .replace(/\br[- ]?(\d{2,3}[a-z]?)\b/g, "r$1")
    .replace(/\b([a-z])[-/]([a-z]+)\b/g, "$1$2");
}

/** @param {string} word */
const single = (word) => (word.length > 3 && word.endsWith("s") && !word.endsWith("ss") ? word.slice(0, -1) : word);

/** The words of a text that say something. A number with its unit leaves the unit.
 *  @param {string} text */
export function wordsOf(text) {
  return plain(text).split(/[^a-z0-9]+/)
    .flatMap((word) => (/^\d+[a-z]{2,}$/.test(word) ? [word.replace(/^\d+/, "")] : [word]))
    .filter((word) => word.length > 1 && !EMPTY.has(word) && !/^\d+$/.test(word))
    .map(single);
}

/** The words of a field; two neighbours also as one word, where that is likely to be typed.
 *  @param {string} text @param {string} [field] */
function fieldWords(text, field = "") {
  return text.split("\n").flatMap((line) => {
    const words = wordsOf(line);
    if (!JOINED_FIELDS.has(field)) return words;
    return [...words, ...words.slice(1).map((word, i) => words[i] + word)];
  });
}

/** The finder over one index.
 *  @param {any} MiniSearch the library's class
 *  @param {Index} index */
export function finder(MiniSearch, index) {
  const { entries, same } = index;
  const pages = entries.filter((entry) => entry.of === undefined);
  const parts = entries.filter((entry) => entry.of !== undefined);
  /** @type {string[][]} */
  const headings = pages.map(() => []);
  for (const part of parts) headings[/** @type {number} */ (part.of)].push(part.title);
  const phrases = pages.map(({ title, words = [] }) => [title, ...words].map((phrase) => wordsOf(phrase)));

  const search = { tokenize: wordsOf, prefix: true, fuzzy: FUZZY };
  const rank = { ...search, boost: BOOST, bm25: { k: 1.2, b: 0.35, d: 0.5 }, weights: { fuzzy: 0.5, prefix: 0.6 } };
  const shared = { tokenize: fieldWords, processTerm: (/** @type {string} */ term) => term };
  const whole = new MiniSearch({ ...shared, fields: Object.keys(BOOST) });
  whole.addAll(pages.map(({ title, words = [], summary = "", text = "" }, id) => ({
    id, title, words: words.join("\n"), headings: headings[id].join("\n"), summary, text,
  })));
  const pieces = new MiniSearch({ ...shared, fields: ["title"] });
  pieces.addAll(parts.map(({ title }, id) => ({ id, title })));

  /** @param {string} term */
  const processTerm = (term) => (same[term] ? [term, same[term]] : term);

  /** A phrase that people use for the page stands in the query as a whole.
   *  @param {number} id @param {Set<string>} asked */
  const meantWhole = (id, asked) => phrases[id].some((phrase) => phrase.length > 0
    && phrase.every((word) => asked.has(word)) && (phrase.length > 1 || asked.size === 1));
  /** The query is the page's title. @param {number} id @param {string[]} terms */
  const isTitle = (id, terms) => phrases[id][0].join(" ") === terms.join(" ");

  /** How much of the query a hit answers. @param {Hit} hit @param {string[]} terms */
  const share = (hit, terms) => terms.filter(
    (term) => hit.queryTerms.includes(term) || hit.queryTerms.includes(same[term])).length / terms.length;

  /** @param {string} query @param {number} [most] @returns {Found[]} */
  return function find(query, most = 12) {
    const terms = wordsOf(query);
    const asked = new Set(terms);
    if (!asked.size) return [];
    /** @type {Hit[]} */
    const hits = whole.search(query, { ...rank, processTerm });
    /** @type {Map<number, {part: Entry, answered: number}[]>} */
    const near = new Map();
    for (const hit of /** @type {Hit[]} */ (pieces.search(query, { ...search, processTerm }))) {
      const answered = share(hit, terms);
      if (answered * terms.length < Math.min(2, terms.length)) continue;
      const part = parts[hit.id];
      const list = near.get(/** @type {number} */ (part.of)) ?? [];
      list.push({ part, answered });
      near.set(/** @type {number} */ (part.of), list);
    }
    for (const list of near.values()) list.sort((a, b) => b.answered - a.answered);
    const ranked = hits.map((hit) => {
      const factor = isTitle(hit.id, terms) ? VERY_TITLE : meantWhole(hit.id, asked) ? WHOLE_PHRASE : 1;
      const step = near.get(hit.id)?.[0].answered ?? 0;
      return { id: hit.id, score: hit.score * share(hit, terms) * factor * (1 + ONE_PLACE * step ** 2) };
    }).sort((a, b) => b.score - a.score || a.id - b.id).slice(0, most);
    return ranked.map(({ id, score }) => ({
      page: pages[id], parts: (near.get(id) ?? []).slice(0, PARTS_SHOWN).map(({ part }) => part), score,
    }));
  };
}
