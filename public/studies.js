// The studies: sections of the page that a second program works out and draws, see ui/study. This puts its
// pieces where they belong and hands it what is typed and pressed in them.
(function () {
  const program = document.currentScript.dataset.study;
  const styles = document.currentScript.dataset.styles.split(" ");
  const key = "cohoist/studies";
  const pieces = {}, values = {}, benches = {}, of = {}; // of: the number of the plan a piece is about
  const held = new WeakMap(); // what an element shows: [piece, its HTML]
  let set = {}, ask = null, gen = 0;
  try { set = JSON.parse(localStorage.getItem(key)) || {}; } catch { /* no storage, or not ours */ }

  // A link may hold more than one plan: the first is opened, the others become variants to compare it with.
  function part() {
    const [first, ...others] = location.hash.split("+");
    if (others.length === 0) return;
    history.replaceState(history.state, "", first);
    adopt({ "compare.kept": [...new Set([...others, ...(set["compare.kept"] || "").split("+")])].filter((t) => t).slice(0, 3).join("+") });
  }
  addEventListener("hashchange", part);

  // dress brings the style sheets of what studies draw; the one for paper still comes after them.
  function dress() {
    for (const href of styles.splice(0)) {
      const link = document.createElement("link");
      link.rel = "stylesheet";
      link.href = href;
      document.querySelector("link[media=print]").before(link);
    }
  }

  function bench(name) {
    dress();
    if (!benches[name]) {
      const w = new Worker("study.js?" + program);
      benches[name] = w;
      w.onmessage = (e) => (e.data === "ready" ? w.postMessage({ bench: name, here: location.href.split("#")[0], ask, set }) : take(e.data));
      w.onerror = () => { delete benches[name]; w.terminate(); };
    }
    return benches[name];
  }

  function take(a) {
    if (a.fault !== undefined) console.error(a.fault);
    Object.assign(pieces, a.pieces);
    for (const name in a.pieces) of[name] = a.gen;
    Object.assign(values, a.values);
    place();
    for (const el of document.querySelectorAll("#studies [data-bench]")) el.setAttribute("aria-busy", a.busy || a.gen < gen);
    if (a.file) save(a.file.name, new Blob([a.file.data], { type: a.file.type }));
    if (a.set) adopt(a.set);
    if (a.put) window.cohoistPut(Object.entries(a.put).flat());
    if (a.plan) window.cohoistTake(a.gen, a.plan, a.jump || "");
  }

  function save(name, blob) {
    const a = document.createElement("a");
    a.href = URL.createObjectURL(blob);
    a.download = name;
    a.click();
    setTimeout(() => URL.revokeObjectURL(a.href), 5000);
  }

  // adopt changes settings, keeps them for the next visit, and tells the benches.
  function adopt(some) {
    Object.assign(set, some);
    try { localStorage.setItem(key, JSON.stringify(set)); } catch { /* kept as long as the page stands */ }
    for (const name in benches) benches[name].postMessage({ set });
  }

  // A drawing of the page as a file of its own: what the style sheets say of it is written into it.
  const looks = ["fill", "fill-opacity", "stroke", "stroke-width", "stroke-dasharray", "stroke-linejoin", "stroke-linecap",
    "opacity", "font-family", "font-size", "font-weight", "text-anchor", "paint-order"];
  function picture(svg) {
    const copy = svg.cloneNode(true), from = svg.querySelectorAll("*"), to = copy.querySelectorAll("*");
    for (let i = to.length - 1; i >= 0; i--) {
      const style = getComputedStyle(from[i]);
      if (style.display === "none" || from[i].matches(".dw-handles")) { to[i].remove(); continue; }
      for (const k of looks) to[i].setAttribute(k, style.getPropertyValue(k));
      for (const k of ["class", "tabindex", "role"]) to[i].removeAttribute(k);
    }
    const box = svg.viewBox.baseVal;
    copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
    copy.setAttribute("width", box.width);
    copy.setAttribute("height", box.height);
    return new Blob([new XMLSerializer().serializeToString(copy)], { type: "image/svg+xml" });
  }

  // stale tells that a piece is about an earlier plan. Forms and faults are about none.
  const stale = (el) => !/^fault |-form$/.test(el.dataset.piece) && of[el.dataset.piece] !== gen;
  const age = () => {
    for (const el of document.querySelectorAll("[data-piece]")) el.toggleAttribute("data-stale", el.dataset.piece in of && stale(el));
  };

  // fill puts pieces into an element, and pieces into those.
  function fill(within) {
    for (const el of within.querySelectorAll("[data-piece]")) {
      const name = el.dataset.piece, html = pieces[name], now = held.get(el);
      if (now && now[0] === name && now[1] === html || html === undefined && !now) continue;
      const folds = [...el.querySelectorAll("details[id]")].map((d) => [d.id, d.open]);
      el.innerHTML = html === undefined ? "" : html;
      for (const [id, open] of folds) { // what was opened or closed stays so
        const d = document.getElementById(id);
        if (d) d.open = open;
      }
      held.set(el, [name, html]);
      fill(el);
    }
  }

  // place shows every piece where the page has room for it. The focus stays.
  function place() {
    const at = document.activeElement, id = at && at.id;
    const mark = at && /^(text|search|textarea)$/.test(at.type) ? [at.value, at.selectionStart, at.selectionEnd] : null;
    fill(document);
    age();
    for (const k in values) {
      const el = document.getElementById(k);
      if (!el || el === document.activeElement) continue;
      if (el.type === "checkbox") el.checked = values[k] === "true";
      else if (el.value !== values[k]) el.value = values[k];
    }
    for (const el of document.querySelectorAll("[data-scrub]")) scrub(el);
    const again = id && document.activeElement !== at && document.getElementById(id);
    if (again) {
      again.focus({ preventScroll: true });
      if (mark) { again.value = mark[0]; again.setSelectionRange(mark[1], mark[2]); }
    }
  }

  // scrub shows the frame that a slider stands at, wherever there are frames of its name, and says what it says.
  function scrub(el) {
    for (const frames of document.querySelectorAll('[data-frames="' + el.dataset.scrub + '"]')) {
      const on = frames.children[el.value], was = frames.querySelector(":scope > [data-on]");
      if (!on || on === was) continue;
      if (was) was.removeAttribute("data-on");
      on.setAttribute("data-on", "");
      if (frames.dataset.says === el.id) el.setAttribute("aria-valuetext", on.textContent);
    }
  }

  // play moves a slider on, each of its steps as long as it says, until the end or until it is stopped.
  let playing = "";
  function play(id) {
    const label = (text) => { const b = document.querySelector('[data-play="' + id + '"]'); if (b) b.textContent = text; };
    const slider = () => document.getElementById(id);
    if (playing === id || !slider()) { playing = ""; label("Play"); return; }
    if (+slider().value >= +slider().max) slider().value = 0;
    const from = +slider().value, start = performance.now();
    playing = id;
    label("Stop");
    const next = (now) => {
      const el = slider();
      if (el && playing === id) {
        values[id] = el.value = from + Math.round(Math.max(0, now - start) / el.dataset.ms);
        scrub(el);
        if (+el.value < +el.max) return requestAnimationFrame(next);
        playing = "";
      }
      label("Play");
    };
    requestAnimationFrame(next);
  }

  // A plan comes when it rests, or at every change while somebody looks at a study. The first can wait until
  // the page has settled, as the program is then still to be loaded.
  let later = 0;
  const send = () => {
    clearTimeout(later);
    bench("live");
    for (const name in benches) benches[name].postMessage({ ask });
  };
  window.cohoistMoved = (number) => {
    if (number === gen) return;
    gen = number;
    age();
  };
  window.cohoistStudies = (bytes, number, now) => {
    ask = bytes;
    gen = number;
    age();
    clearTimeout(later);
    if (now || benches.live) send(); else later = setTimeout(send, 2500);
  };

  // Paper waits for what is drawn beside the page, though not for ever.
  window.cohoistPrint = () => {
    if (ask) send();
    const end = Date.now() + 6000;
    const due = () => [...document.querySelectorAll("#paper, #studies [data-bench=live] [data-piece]")].some(stale);
    const look = () => (due() && Date.now() < end ? setTimeout(look, 50) : print());
    setTimeout(look, 100);
  };
  // What stands open is worked on; a bench that is not there yet is put up.
  part();
  window.cohoistPlace = () => {
    place();
    if (ask) for (const el of document.querySelectorAll("#studies [data-bench]")) bench(el.dataset.bench);
  };

  const inside = (e, what) => {
    const el = e.target.closest && e.target.closest("[data-" + what + "]");
    return el && el.closest("[data-bench]") ? el : null;
  };
  const tell = (el, message) => bench(el.closest("[data-bench]").dataset.bench).postMessage(message);
  const choose = (el, name, value) => {
    if (el.id && el.type !== "file") values[el.id] = el.type === "checkbox" ? value : el.value; // until the study answers
    bench(el.closest("[data-bench]").dataset.bench);
    adopt({ [name]: value });
  };
  // measured is what was typed, a bare number with the unit that stands beside the input.
  const measured = (el) => (el.dataset.unit && /[\d.,]\s*$/.test(el.value) ? el.value + " " + el.dataset.unit : el.value);
  addEventListener("click", (e) => {
    let el = inside(e, "do");
    if (el) tell(el, { do: el.dataset.do });
    el = inside(e, "picture");
    if (el) save(el.dataset.name, picture(document.querySelector(el.dataset.picture)));
    el = inside(e, "show");
    if (el) window.cohoistShow(el.dataset.show);
    el = inside(e, "play");
    if (el) play(el.dataset.play);
  });
  addEventListener("input", (e) => {
    const el = inside(e, "scrub");
    if (!el) return;
    playing = "";
    values[el.id] = el.value;
    scrub(el);
  });
  addEventListener("change", (e) => {
    let el = inside(e, "set");
    if (el && el.type === "file") {
      if (el.files[0]) el.files[0].text().then((text) => choose(el, el.dataset.set, text));
    } else if (el) choose(el, el.dataset.set, el.type === "checkbox" ? String(el.checked) : measured(el));
    el = inside(e, "field");
    if (el) tell(el, { path: el.dataset.field, text: el.value });
  });
})();
