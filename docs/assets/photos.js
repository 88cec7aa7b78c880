// @ts-check
/**
 * Photos of readings and hold points. They stay on this device, beside the jobs.
 *
 *   import { photos } from "./photos.js";
 *
 *   await photos.take(of)        asks the camera for a photo, notes it on the open job's sheet
 *   await photos.drop(id)        takes it off again
 *   await photos.get(id)         {id, job, of, at, blob} or undefined
 *   await photos.of(job, of)     the photos of one reading or hold point
 *   await photos.pack(file)      a job's file, or one zip of it and its photos
 *   await photos.unpack(file)    {text, keep()} of a job's file or zip
 *   photos                       fires "change" when one came or went
 *
 * A photo is drawn anew on its way in, at most 1600 pixels wide: place, time and name that the
 * camera wrote into it do not come along. The job sheet knows each photo's name, what it shows and
 * when; the picture itself never stands in it.
 */

import { jobs, now } from "./store.js";

/** @typedef {{id: string, job: string, of: string, at: string, blob: Blob}} Photo */

const NAME = "downflow-photos";
const LONGEST_PX = 1600;
const QUALITY = 0.8;
const MOST_BYTES = 8_000_000;
const MOST_PHOTOS = 200;
const MOST_PACK_BYTES = 400_000_000;
const FORGET_AFTER_MS = 7 * 24 * 3600_000;
const OWN_NAME = /^[A-Za-z0-9-]{1,80}$/;

/** @template T @param {IDBRequest<T>} request @returns {Promise<T>} */
const done = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error ?? new Error("the device refused"));
});

/** The zip library, brought in when a job with photos goes out or comes in. */
const zipper = () => import(new URL("./vendor/fflate.js", import.meta.url).href);

/** Draws a picture anew, upright and small. @param {Blob} file @returns {Promise<Blob>} */
export async function redrawn(file) {
  const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  const share = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height));
  const sheet = document.createElement("canvas");
  sheet.width = Math.max(1, Math.round(picture.width * share));
  sheet.height = Math.max(1, Math.round(picture.height * share));
  const pen = sheet.getContext("2d");
  if (!pen) throw new Error("this device cannot draw");
  pen.drawImage(picture, 0, 0, sheet.width, sheet.height);
  picture.close();
  return new Promise((resolve, reject) => {
    sheet.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("this device cannot draw"))), "image/jpeg", QUALITY);
  });
}

class Photos extends EventTarget {
  /** @type {IDBDatabase | undefined} */
  base;
  /** What this page keeps where the device keeps nothing. @type {Map<string, Photo>} */
  memory = new Map();
  ready = this.#reach();

  async #reach() {
    try {
      const request = indexedDB.open(NAME, 1);
      request.onupgradeneeded = () => {
        request.result.createObjectStore("photos", { keyPath: "id" }).createIndex("job", "job");
      };
      this.base = await done(request);
      this.base.onversionchange = () => this.base?.close();
    } catch {
      this.base = undefined;
    }
  }

  /** @param {IDBTransactionMode} mode */
  #store(mode) {
    return this.base?.transaction("photos", mode).objectStore("photos");
  }

  /** @param {string} id @returns {Promise<Photo | undefined>} */
  async get(id) {
    await this.ready;
    const store = this.#store("readonly");
    return (store && (await done(store.get(id)))) ?? this.memory.get(id);
  }

  /** @returns {Promise<Photo[]>} */
  async all() {
    await this.ready;
    const store = this.#store("readonly");
    return [...(store ? await done(store.getAll()) : []), ...this.memory.values()];
  }

  /** @param {string} job @param {string} of @returns {Promise<Photo[]>} */
  async of(job, of) {
    return (await this.all()).filter((each) => each.job === job && each.of === of);
  }

  /** @param {Photo} photo */
  async keep(photo) {
    await this.ready;
    try {
      const store = this.#store("readwrite");
      if (!store) throw new Error("nothing is kept here");
      await done(store.put(photo));
    } catch {
      this.memory.set(photo.id, photo);
    }
  }

  /** @param {string} id */
  async forget(id) {
    await this.ready;
    this.memory.delete(id);
    const store = this.#store("readwrite");
    if (store) await done(store.delete(id));
  }

  // ---- taking ----

  /** Opens the camera; resolves to false when nothing was taken. @param {string} of */
  async take(of) {
    const file = await this.#ask();
    return file ? this.add(file, of) : false;
  }

  /** @returns {Promise<File | null>} */
  #ask() {
    const input = document.createElement("input");
    input.type = "file";
    input.accept = "image/*";
    input.setAttribute("capture", "environment");
    input.hidden = true;
    document.body.append(input);
    return new Promise((resolve) => {
      const end = (/** @type {File | null} */ file) => {
        input.remove();
        resolve(file);
      };
      input.addEventListener("change", () => end(input.files?.[0] ?? null));
      input.addEventListener("cancel", () => end(null));
      input.click();
    });
  }

  /** @param {Blob} file @param {string} of */
  async add(file, of) {
    const photo = { id: crypto.randomUUID(), job: "", of, at: now(), blob: await redrawn(file) };
    await this.keep(photo);
    const reply = await jobs.apply("photo", { id: photo.id, of, at: photo.at }).catch(() => null);
    if (!reply?.ok) {
      await this.forget(photo.id);
      return false;
    }
    await this.keep({ ...photo, job: reply.id });
    this.dispatchEvent(new Event("change"));
    return true;
  }

  /** @param {string} id */
  async drop(id) {
    const reply = await jobs.apply("photo_gone", { id }).catch(() => null);
    if (!reply?.ok) return;
    await this.forget(id);
    this.dispatchEvent(new Event("change"));
  }

  /** Photos of jobs that are gone for a week go too; a deletion can be taken back before. */
  async sweep() {
    await jobs.ready;
    const texts = [...(await jobs.shelf.all()), ...(jobs.undoable?.before ?? [])].map((job) => job.text);
    for (const photo of await this.all()) {
      const old = Date.now() - Date.parse(photo.at) > FORGET_AFTER_MS;
      if (old && !texts.some((text) => text.includes(photo.id))) await this.forget(photo.id);
    }
  }

  // ---- in and out ----

  /** One zip of a job's file and its photos; the file alone where it has none. @param {File} file */
  async pack(file) {
    const text = await file.text();
    const mine = (await this.all()).filter((each) => text.includes(each.id));
    if (!mine.length) return file;
    const { zipSync, strToU8 } = await zipper();
    /** @type {Record<string, any>} */
    const parts = { "job.json": strToU8(text) };
    for (const each of mine) parts[`photos/${each.id}.jpg`] = [new Uint8Array(await each.blob.arrayBuffer()), { level: 0 }];
    return new File([zipSync(parts)], file.name.replace(/\.json$/, ".zip"), { type: "application/zip" });
  }

  /**
   * A job's text, and what keeps the photos that came with it once the job is taken in.
   * @param {File} file
   * @returns {Promise<{text: string, keep: (job: string) => Promise<void>}>}
   */
  async unpack(file) {
    const head = new Uint8Array(await file.slice(0, 2).arrayBuffer());
    if (head[0] !== 0x50 || head[1] !== 0x4b) return { text: await file.text(), keep: async () => {} };
    if (file.size > MOST_PACK_BYTES) throw new Error("the file is far too large");
    const { unzipSync, strFromU8 } = await zipper();
    let count = 0;
    /** @type {Record<string, Uint8Array<ArrayBuffer>>} */
    const parts = unzipSync(new Uint8Array(await file.arrayBuffer()), {
      filter: (/** @type {{name: string, originalSize: number}} */ part) => part.originalSize <= MOST_BYTES
        && (part.name === "job.json" || (/^photos\/[A-Za-z0-9-]{1,80}\.jpg$/.test(part.name) && (count += 1) <= MOST_PHOTOS)),
    });
    const inner = parts["job.json"];
    if (!inner) throw new Error("no job sheet lies in it");
    const text = strFromU8(inner);
    return { text, keep: (job) => this.#keepAll(job, text, parts) };
  }

  /** @param {string} job @param {string} text @param {Record<string, Uint8Array<ArrayBuffer>>} parts */
  async #keepAll(job, text, parts) {
    const noted = JSON.parse(text).photos;
    for (const each of Array.isArray(noted) ? noted : []) {
      const bytes = typeof each?.id === "string" && OWN_NAME.test(each.id) ? parts[`photos/${each.id}.jpg`] : undefined;
      if (!bytes || (await this.get(each.id))) continue;
      const blob = await redrawn(new Blob([bytes], { type: "image/jpeg" })).catch(() => null);
      if (blob) await this.keep({ id: each.id, job, of: String(each.of ?? ""), at: String(each.at ?? now()), blob });
    }
    this.dispatchEvent(new Event("change"));
  }
}

export const photos = new Photos();
