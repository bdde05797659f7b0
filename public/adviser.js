// The program that works out advice, loaded when it is first asked for.
importScripts("wasm_exec.js");
const go = new Go();
const end = (why) => setTimeout(() => { throw new Error(why); }); // as an error of the worker, which the page hears
fetch("advise.wasm" + location.search).then((r) => (r.ok ? r.arrayBuffer() : Promise.reject(new Error("advise.wasm: " + r.status))))
  .then((code) => WebAssembly.instantiate(code, go.importObject)).then((made) => go.run(made.instance))
  .then(() => end("the worker has ended"), (err) => end(err.message));
