"use strict";

// Starts the program, says so when it cannot, and keeps it on the device.
(() => {
  const root = new URL(".", document.currentScript.src);

  // A host that keeps each page in a folder shows it one step down: the page
  // names its files from there, and the program knows the address without the
  // slash.
  document.querySelector("base")?.remove();
  if (location.pathname.endsWith("/") && location.pathname !== root.pathname) {
    history.replaceState(null, "", location.pathname.slice(0, -1) + location.search + location.hash);
  }
  const kept = "The work that was saved is kept.";

  // The program asks for its settings by this name.
  const settings = { GOAPP_ROOT_PREFIX: root.pathname.replace(/\/$/, "") };
  globalThis.goappGetenv = (key) => settings[key] ?? "";

  // Stands in for the browser's storage where site data is blocked.
  class MemoryStorage {
    #items = new Map();
    get length() { return this.#items.size; }
    key(index) { return [...this.#items.keys()][index] ?? null; }
    getItem(key) { return this.#items.get(String(key)) ?? null; }
    setItem(key, value) { this.#items.set(String(key), String(value)); }
    removeItem(key) { this.#items.delete(String(key)); }
    clear() { this.#items.clear(); }
  }

  function notice(text, reload) {
    document.getElementById("notice-text").textContent = text;
    document.getElementById("notice-reload").hidden = !reload;
    document.getElementById("notice").hidden = false;
  }

  function provideStorage() {
    for (const name of ["localStorage", "sessionStorage"]) {
      try {
        globalThis[name].getItem("");
      } catch {
        Object.defineProperty(globalThis, name, { value: new MemoryStorage() });
        notice("This browser keeps no data for this page, so your work is lost when the page is closed.", false);
      }
    }
  }

  // The first element of the body makes way for the program's first page.
  function markReady() {
    const start = document.getElementById("start");
    const watcher = new MutationObserver(() => {
      if (start.isConnected) return;
      watcher.disconnect();
      requestAnimationFrame(() => { document.documentElement.dataset.ready = ""; });
    });
    watcher.observe(document.body, { childList: true });
  }

  // Counts the bytes of a copy, so that the browser compiles the original as
  // it comes in. A failure is told by the one who reads the original.
  async function showProgress(copy) {
    const bar = document.getElementById("progress");
    const reader = copy.body.getReader();
    let bytes = 0;
    for (;;) {
      const { done, value } = await reader.read().catch(() => ({ done: true }));
      if (done) return;
      bytes += value.byteLength;
      bar.value = bytes;
    }
  }

  async function getProgram() {
    const response = await fetch(new URL("app.wasm", root));
    if (!response.ok) throw new Error(`the server answered ${response.status}`);
    showProgress(response.clone());
    return response;
  }

  // With a worker the page opens without a connection. It is set up after the
  // start, which it would slow down.
  async function keepOffline() {
    if (!("serviceWorker" in navigator)) return;
    const replaces = navigator.serviceWorker.controller !== null;
    const registration = await navigator.serviceWorker.register(new URL("sw.js", root), { updateViaCache: "none" });
    const watch = (worker) => worker?.addEventListener("statechange", () => {
      if (worker.state === "activated" && replaces) globalThis.goappOnUpdate?.();
    });
    watch(registration.installing);
    registration.addEventListener("updatefound", () => watch(registration.installing));
  }

  async function start() {
    provideStorage();
    markReady();
    const go = new Go();
    let instance;
    try {
      ({ instance } = await WebAssembly.instantiateStreaming(getProgram(), go.importObject));
    } catch (err) {
      notice(`The program could not be started: ${err.message}. ${kept}`, true);
      return;
    }
    const end = go.run(instance);
    keepOffline().catch((err) => console.warn("no copy for use without a connection:", err.message));
    // The program ends only by a fault.
    await end.catch(() => {});
    notice(`The page stopped working. ${kept}`, true);
  }

  document.getElementById("notice-reload").addEventListener("click", () => location.reload());
  start();
})();
