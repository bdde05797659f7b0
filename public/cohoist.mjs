// Cohoist's calculation for other pages and for Node; cohoist.d.mts says what it offers. Beside this file stand
// library.wasm and wasm_exec.js, of the same build.

let runtime; // the class that runs Go programs, loaded once
let loads = 0;

async function goRuntime() {
  const before = globalThis.Go;
  await import(new URL("wasm_exec.js", import.meta.url).href);
  const Go = globalThis.Go;
  if (before) globalThis.Go = before; else delete globalThis.Go;
  return Go;
}

async function compiled(wasm) {
  if (wasm instanceof WebAssembly.Module) return wasm;
  if (wasm instanceof ArrayBuffer || ArrayBuffer.isView(wasm)) return WebAssembly.compile(wasm);
  const url = new URL(wasm ?? "library.wasm", import.meta.url);
  if (url.protocol === "file:") {
    const { readFile } = await import("node:fs/promises");
    return WebAssembly.compile(await readFile(url));
  }
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`${url}: the host answered ${answer.status}`);
  return WebAssembly.compile(await answer.arrayBuffer());
}

export class CohoistError extends Error {
  constructor(text) {
    super(text);
    this.name = "CohoistError";
    this.lines = text.split("\n");
  }
}

export async function load({ wasm } = {}) {
  runtime ??= goRuntime();
  const [Go, module] = await Promise.all([runtime, compiled(wasm)]);
  const go = new Go();
  const receive = `cohoist library ${++loads}`;
  go.argv = ["library", receive];
  let own;
  globalThis[receive] = (api) => { own = api; };
  try {
    go.run(await WebAssembly.instantiate(module, go.importObject)); // runs until it has handed over its functions, then waits
  } finally {
    delete globalThis[receive];
  }
  const call = (name) => (input) => {
    const { value, error } = own[name](typeof input === "string" ? input : JSON.stringify(input));
    if (error !== undefined) throw new CohoistError(error);
    return value;
  };
  return { report: call("report"), advice: call("advice"), encode: call("encode"), decode: call("decode"), files: call("files") };
}
