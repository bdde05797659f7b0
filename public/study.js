// The program that works out studies, loaded when it is first asked for.
importScripts("wasm_exec.js");
const go = new Go();
go.env = { GOGC: "400" };
const end = (why) => setTimeout(() => { throw new Error(why); }); // as an error of the worker, which the page hears
fetch(location.search.slice(1)).then((r) => (r.ok ? r.arrayBuffer() : Promise.reject(new Error("the studies: " + r.status))))
  .then((code) => WebAssembly.instantiate(code, go.importObject)).then((made) => go.run(made.instance))
  .then(() => end("the worker has ended"), (err) => end(err.message));
