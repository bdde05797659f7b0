// Starts the program. Kept small: everything else is Go.
(function () {
  const me = document.currentScript;
  const say = (text) => {
    const el = document.getElementById("boot");
    if (el) { el.textContent = text; el.hidden = text === ""; }
  };
  window.cohoistReady = () => {
    say("");
    if (window.isSecureContext && navigator.serviceWorker) setTimeout(keep, navigator.serviceWorker.controller ? 0 : 4000);
  };
  window.cohoistSay = say;
  window.cohoistStands = me.dataset.stands; // what the page shows before the program runs

  // Keeps the site's files for when there is no network, see offline.js: after all else on a first visit. A newer version
  // is offered, never forced.
  function keep() {
    const workers = navigator.serviceWorker, newer = document.getElementById("newer");
    const controlled = workers.controller !== null;
    let asked = false;
    workers.addEventListener("controllerchange", () => {
      if (asked) location.reload();
      else if (controlled) newer.hidden = false; // another tab asked
    });
    workers.register("offline.js", { updateViaCache: "none" }).then((kept) => {
      const look = () => { if (kept.waiting && workers.controller) newer.hidden = false; };
      look();
      kept.addEventListener("updatefound", () => kept.installing && kept.installing.addEventListener("statechange", look));
      document.addEventListener("visibilitychange", () => { if (!document.hidden) kept.update().catch(() => {}); });
      newer.querySelector("button").addEventListener("click", () => {
        asked = true;
        if (kept.waiting) kept.waiting.postMessage("take over"); else location.reload();
      });
    }, () => {}); // no network, or a browser that keeps nothing: the page works as it is
  }

  // Drawing can take the focus from an element that goes away. The events of that must not reach
  // the program while it is drawing: it would wait for itself.
  let drawing = 0;
  for (const type of ["blur", "focusout", "focus", "focusin", "change"]) {
    window.addEventListener(type, (e) => { if (drawing) e.stopImmediatePropagation(); }, true);
  }
  const render = window.vuguRender;
  window.vuguRender = () => {
    drawing++;
    try { render(); } finally { drawing--; }
  };

  // Changes the page by a patch: fields of four, see ui/paint.
  const app = document.getElementById("app");
  window.cohoistPatch = (text) => {
    const f = text.split("\x1f");
    drawing++;
    try {
      for (let i = 0; i + 3 < f.length; i += 4) {
        let at = app;
        if (f[i] !== "") for (const k of f[i].split(",")) at = at.childNodes[k];
        const key = f[i + 2], value = f[i + 3];
        switch (f[i + 1]) {
          case "a": at.setAttribute(key, value); break;
          case "d": at.removeAttribute(key); break;
          case "p": { const v = JSON.parse(value); if (at[key] !== v) at[key] = v; break; }
          case "t": at.nodeValue = value; break;
          case "h": at.innerHTML = value; break;
          case "n": while (at.childNodes.length > value) at.lastChild.remove(); break;
          case "x": {
            const [tag, space] = value.split(":").reverse();
            const n = value === "" ? document.createTextNode("")
              : space ? document.createElementNS("http://www.w3.org/2000/svg", tag) : document.createElement(tag);
            const old = at.childNodes[key];
            if (old) old.replaceWith(n); else at.append(n);
          }
        }
      }
    } finally { drawing--; }
  };

  if (!window.WebAssembly) {
    say("This browser cannot run WebAssembly, which the calculation needs. A current browser can.");
    return;
  }
  const go = new Go();
  go.env = { GOGC: "400" }; // the heap is small, and collecting takes the time of frames
  const url = new URL(me.dataset.wasm, document.baseURI).href;
  const fetched = () => fetch(url, { credentials: "same-origin" }).then((r) => {
    if (!r.ok) throw new Error("the host answered " + r.status);
    return r;
  });
  const compiled = WebAssembly.compileStreaming
    ? WebAssembly.compileStreaming(fetched()).catch(() => fetched().then((r) => r.arrayBuffer()).then((b) => WebAssembly.compile(b)))
    : fetched().then((r) => r.arrayBuffer()).then((b) => WebAssembly.compile(b));
  // The worker runs first: what it has made ready of the program's code is ready for the page too, which so stands
  // still for half as long. A worker that does not come is not waited for.
  const ahead = (module) => new Promise((go) => {
    let worker;
    try { worker = new Worker("worker.js"); } catch { go(); return; }
    const late = setTimeout(() => { worker.terminate(); go(); }, 2000);
    worker.onmessage = () => { clearTimeout(late); window.cohoistWorker = worker; go(); };
    worker.onerror = () => { clearTimeout(late); worker.terminate(); go(); };
    worker.postMessage(module);
  });
  compiled.then((module) => {
    window.cohoistModule = module;
    return ahead(module).then(() => WebAssembly.instantiate(module, go.importObject));
  }).then((instance) => {
    go.run(instance).then(() => say("The program has ended. Reload the page; the plan is kept."));
  }).catch((e) => {
    say("The program could not be loaded (" + e.message + "). Reload the page to try again.");
  });
})();
