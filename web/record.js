"use strict";

// Keeps the record in the browser's database: a log that is only added to, and
// beside it the state that was last worked out from it. The program reads and
// writes through the functions below, each of which gives a promise.
(() => {
  let opening;

  function result(request) {
    return new Promise((done, fail) => {
      request.onsuccess = () => done(request.result);
      request.onerror = () => fail(request.error);
    });
  }

  function ended(transaction) {
    return new Promise((done, fail) => {
      transaction.oncomplete = () => done();
      transaction.onabort = () => fail(transaction.error ?? new Error("it was broken off"));
    });
  }

  function connect() {
    const request = indexedDB.open("riserwork", 1);
    request.onupgradeneeded = () => {
      const db = request.result;
      db.createObjectStore("log", { autoIncrement: true }).createIndex("id", "id", { unique: true });
      db.createObjectStore("state");
    };
    return result(request).then((db) => {
      db.onversionchange = () => db.close();
      db.onclose = () => { opening = undefined; };
      return db;
    });
  }

  function open() {
    opening ??= connect().catch((err) => {
      opening = undefined;
      throw err;
    });
    return opening;
  }

  // Adds entries, one a line in each text. One that is there already is passed
  // over; how many were new is the result.
  async function add(ids, texts) {
    const transaction = (await open()).transaction("log", "readwrite");
    const log = transaction.objectStore("log");
    const done = ended(transaction);
    const lines = texts.split("\n");
    let added = 0;
    try {
      ids.split("\n").forEach((id, i) => {
        const request = log.add({ id, text: lines[i] });
        request.onsuccess = () => { added++; };
        request.onerror = (event) => {
          if (request.error.name !== "ConstraintError") return;
          event.preventDefault();
          event.stopPropagation();
        };
      });
    } catch (err) {
      done.catch(() => {});
      throw err;
    }
    await done;
    return added;
  }

  // Reads the entries past a key: the last key, how many, and their texts.
  async function since(key) {
    const log = (await open()).transaction("log").objectStore("log");
    const range = key > 0 ? IDBKeyRange.lowerBound(key, true) : undefined;
    const [keys, entries] = await Promise.all([result(log.getAllKeys(range)), result(log.getAll(range))]);
    const texts = entries.map((entry) => String(entry?.text ?? "?").replaceAll("\n", " "));
    return { last: keys.at(-1) ?? key, text: texts.join("\n") };
  }

  async function state() {
    const saved = await result((await open()).transaction("state").objectStore("state").get("latest"));
    return { last: Number(saved?.last) || 0, text: String(saved?.text ?? "") };
  }

  async function keepState(last, text) {
    const transaction = (await open()).transaction("state", "readwrite");
    transaction.objectStore("state").put({ last, text }, "latest");
    await ended(transaction);
  }

  async function wipe() {
    const transaction = (await open()).transaction(["log", "state"], "readwrite");
    transaction.objectStore("log").clear();
    transaction.objectStore("state").clear();
    await ended(transaction);
  }

  // Whether the browser has promised not to clear the data by itself; asked
  // for where it is wanted.
  async function persist(ask) {
    if (!navigator.storage?.persisted) return false;
    return (await navigator.storage.persisted()) || (ask && await navigator.storage.persist());
  }

  function save(name, text) {
    const url = URL.createObjectURL(new Blob([text], { type: "text/plain" }));
    const link = document.createElement("a");
    link.href = url;
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(url), 10_000);
  }

  globalThis.riserworkRecord = { add, since, state, keepState, wipe, persist, save };
})();
