// @ts-check
/**
 * The homeowner link, read. Pure functions: no page, no network. Each slot is checked by a table
 * made with the page; what does not fit refuses the whole link.
 */

/** @typedef {[name: string, kind: string, pattern: string, longest: number]} Slot */
/** @typedef {Record<string, string>} Slots */
/** @typedef {{slots: Slots, fault: "" | "broken" | "newer"}} Read */

export const VERSION = "1";
const LONGEST = 1200;
const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/** Three characters over the slots, as the handbook makes them. @param {Uint8Array} bytes */
export function checkOf(bytes) {
  let total = 0;
  for (const byte of bytes) total = (total * 131 + byte + 1) % 262144;
  return ALPHABET[total >> 12] + ALPHABET[(total >> 6) & 63] + ALPHABET[total & 63];
}

/** Bytes of a base64url text, or nothing. @param {string} text */
function bytesOf(text) {
  if (text.length % 4 === 1) return undefined;
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let bits = 0, have = 0, at = 0;
  for (const letter of text) {
    const six = ALPHABET.indexOf(letter);
    if (six < 0) return undefined;
    bits = ((bits << 6) | six) & 0xffff;
    have += 6;
    if (have >= 8) {
      have -= 8;
      bytes[at++] = (bits >> have) & 255;
    }
  }
  // Left-over bits that are not zero would make two links of one.
  return bits & ((1 << have) - 1) ? undefined : bytes;
}

/** The slots of a fragment with its `#`. @param {unknown} fragment @param {readonly Slot[]} table @returns {Read} */
export function decode(fragment, table) {
  const broken = /** @type {Read} */ ({ slots: {}, fault: "broken" });
  if (typeof fragment !== "string" || fragment.length > LONGEST) return broken;
  if (fragment === "" || fragment === "#") return { slots: {}, fault: "" };
  const found = /^#([0-9]{1,3})\.([A-Za-z0-9_-]*)$/.exec(fragment);
  if (!found) return broken;
  if (found[1] !== VERSION) return { slots: {}, fault: "newer" };
  const bytes = bytesOf(found[2]);
  if (!bytes || bytes.length < 4 || bytes[3] !== 10) return broken;
  const body = bytes.subarray(4);
  if (checkOf(body) !== String.fromCharCode(bytes[0], bytes[1], bytes[2])) return broken;
  let text = "";
  try {
    text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(body);
  } catch {
    return broken;
  }
  const parts = text.split("\n");
  if (parts.length > table.length || (parts.length > 1 && parts[parts.length - 1] === "")) return broken;
  /** @type {Slots} */
  const slots = Object.create(null);
  for (const [index, part] of parts.entries()) {
    if (!part) continue;
    const [name, , pattern, longest] = table[index];
    if ([...part].length > longest || !new RegExp(`^(?:${pattern})$`, "u").test(part)) return broken;
    slots[name] = part;
  }
  return { slots, fault: "" };
}

/**
 * Whether a condition holds: `a`, `a=n`, `a~w`, with or without `!`, joined by `&`.
 * @param {string} condition @param {Slots} slots
 */
export function holds(condition, slots) {
  return condition.split("&").every((one) => {
    const not = one.startsWith("!");
    const found = /^([a-z_]+)(?:([=~])([a-z]))?$/.exec(not ? one.slice(1) : one);
    if (!found) return false;
    const value = slots[found[1]] ?? "";
    const is = !found[2] ? value !== "" : found[2] === "=" ? value === found[3] : value.includes(found[3]);
    return is !== not;
  });
}

/**
 * A slot's text as the page shows it: marks set in type, months by name, no number changed.
 * @param {string} kind @param {string} text @param {Slots} slots
 * @param {readonly string[]} months @param {string} of as in "mayo de 2027"
 */
export function shown(kind, text, slots, months, of) {
  const minus = text.replace("-", "\u2212");
  const year = text.slice(0, 4);
  const month = months[Number(text.slice(4, 6)) - 1];
  switch (kind) {
    case "temperature": return `${minus}\u00a0${slots.units === "s" ? "°C" : "°F"}`;
    case "size": return `${text.split("x").join("\u00a0×\u00a0")}\u00a0in`;
    case "month": return `${month}${of}${year}`;
    case "month_name": return months[Number(text) - 1];
    case "day": return of === " " ? `${month} ${Number(text.slice(6))}, ${year}`
      : `${Number(text.slice(6))}${of}${month}${of}${year}`;
    case "text": return text.replace(/([0-9])-(?=[0-9])/g, "$1\u2013");
    default: return text;
  }
}

/** The dates as a calendar file. @param {Slots} slots @param {{filter: string, visit: string}} words */
export function calendar(slots, words) {
  const stamp = `${slots.made ?? "20200101"}T000000Z`;
  /** @type {string[]} */
  const lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Downflow//homeowner page//EN"];
  /** @param {string} id @param {string} month @param {string} every @param {string} what */
  const event = (id, month, every, what) => {
    lines.push("BEGIN:VEVENT", `UID:${id}-${slots.made ?? ""}-${month}@downflow`, `DTSTAMP:${stamp}`,
      `DTSTART;VALUE=DATE:${month}01`, `RRULE:${every}`, `SUMMARY:${what}`, "END:VEVENT");
  };
  if (slots.filter_next && slots.filter_months) {
    event("filter", slots.filter_next, `FREQ=MONTHLY;INTERVAL=${slots.filter_months}`,
      words.filter + (slots.filter ? ` ${slots.filter}` : ""));
  }
  if (slots.visit) event("visit", slots.visit, "FREQ=YEARLY", words.visit);
  lines.push("END:VCALENDAR", "");
  return lines.join("\r\n");
}

/** Lines of the chart from its eight places; a place of 0 has none. @param {string} places */
export function chart(places) {
  const [rests, ends, furnaceLeft, backup, backupLeft, day, furnaceDay, pumpDay] = places.split(".");
  return {
    pump: `M44 50H${rests}L${ends} 250`,
    furnace: furnaceLeft === "0" ? "" : `M44 ${furnaceLeft}L${ends} 250`,
    backup: backup === "0" ? "" : `M44 ${backupLeft}L${backup} 250H44Z`,
    mark: `M${day} 50V250`,
    day, furnaceDay, pumpDay,
  };
}
