// Uses the library as another program would, and prints what it got as JSON. node use.mjs FOLDER < plan.json
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const { load, CohoistError } = await import(pathToFileURL(process.argv[2] + "/cohoist.mjs").href);
const text = readFileSync(0, "utf8");
const lift = await load();
const fragment = lift.encode(text);
const caught = (f) => {
  try { f(); } catch (e) { return { ours: e instanceof CohoistError && e instanceof Error, lines: e.lines, message: e.message }; }
};
const second = await load({ wasm: readFileSync(process.argv[2] + "/library.wasm") });
console.log(JSON.stringify({
  report: lift.report(text), asObject: second.report(JSON.parse(text)), fragment, plan: lift.decode("#" + fragment), advice: lift.advice(text),
  files: lift.files(text).map((f) => ({ name: f.name, bytes: f.data.length, head: new TextDecoder().decode(f.data.slice(0, 5)) })),
  faulty: caught(() => lift.report('{"format":"liftplan/1","seed":"x","team":[]}')), foreign: caught(() => lift.decode("#other")),
  noForces: caught(() => lift.files('{"format":"liftplan/1","team":[{"id":"A","vehicle":"v"}],"vehicles":{"v":{}}}')),
  still: lift.report(text) === second.report(text), left: Object.keys(globalThis).filter((k) => /cohoist|^Go$/.test(k)),
}));
