// A second copy of the same program, for long calculations. The page posts it the compiled module.
importScripts("wasm_exec.js");
self.onmessage = (e) => {
  const go = new Go();
  go.argv = ["cohoist", "worker"];
  self.onmessage = null;
  const end = (why) => setTimeout(() => { throw new Error(why); }); // as an error of the worker, which the page hears
  WebAssembly.instantiate(e.data, go.importObject).then((instance) => go.run(instance))
    .then(() => end("the worker has ended"), (err) => end(err.message));
};
