// A second copy of the same program, for long calculations. The page posts it the compiled module.
importScripts("wasm_exec.js");
self.onmessage = (e) => {
  const go = new Go();
  go.argv = ["cohoist", "worker"];
  self.onmessage = null;
  WebAssembly.instantiate(e.data, go.importObject).then((instance) => go.run(instance));
};
