// Times this project's rehearsal beside a rigid-body engine, both as WebAssembly in one run of Node: the same scenes, the same
// step, both by the classical rule of Runge and Kutta, by turns. node race.mjs WASM GOROOT SCENES, in a folder with mujoco-js.
import fs from 'node:fs';
import { createRequire } from 'node:module';
import load from 'mujoco-js';
import { xml, start } from './scene.mjs';

const [program, goroot, scenes] = process.argv.slice(2);
const STEP = 1 / 1200, ROUNDS = 15;

const require = createRequire(import.meta.url);
globalThis.require = require;
globalThis.fs = fs;
globalThis.path = require('path');
require(`${goroot}/lib/wasm/wasm_exec.js`);
const go = new globalThis.Go();
go.argv = ['race', '-test.run=^TestRace$'];
go.env = { ...process.env, COHOIST_RACE: '1' };
const ready = new Promise(done => { globalThis.raced = done; });
go.run((await WebAssembly.instantiate(fs.readFileSync(program), go.importObject)).instance);
await ready;
const engine = await load();

// six vehicles of 2.4 kg above a box of 6 kg: thrusts that hold the weight, from other places than those of rest
function six() {
  const bodies = [{ mass: 6, inertia: [0.13, 0.19, 0.28], at: [0, 0, 0], velocity: [0.3, -0.2, 0], spin: [0.1, 0.2, 0.1] }], lines = [];
  for (let i = 0; i < 6; i++) {
    const [c, s] = [Math.cos(i * Math.PI / 3), Math.sin(i * Math.PI / 3)];
    bodies.push({ mass: 2.4, inertia: [0.04, 0.04, 0.07], at: [0.4 * c, 0.35 * s, 3 + 0.01 * (i % 2)], velocity: [0, 0, 0], spin: [0, 0, 0], thrust: 3.4 * 9.80665 });
    lines.push({ a: i + 1, b: 0, at_a: [0, 0, 0], at_b: [0.35 * c, 0.3 * s, 0.1], length: 2.9, stiffness: 2500 });
  }
  return { kind: 'six vehicles', bodies, lines, cut: null };
}

function engineRun(s, until, step) {
  engine.FS.writeFile('/scene.xml', xml(s, step));
  const model = engine.MjModel.loadFromXML('/scene.xml'), data = new engine.MjData(model);
  start(data, s);
  const from = performance.now(), cut = s.cut ? Math.round(s.cut.time / step) : -1;
  for (let k = Math.round(until / step), n = 0; n < k; n++) {
    if (n === cut) model.tendon_stiffness[s.cut.line] = 0;
    engine.mj_step(model, data);
  }
  const took = performance.now() - from;
  const q = Array.from(data.qpos);
  data.delete(); model.delete();
  return { took, places: s.bodies.flatMap((_, i) => q.slice(7 * i, 7 * i + 3)) };
}

function ownRun(s, until, step) {
  globalThis.cohoist.load(JSON.stringify(s));
  const from = performance.now();
  globalThis.cohoist.run(until, step);
  return { took: performance.now() - from, places: globalThis.cohoist.places() };
}

const apart = (a, b) => Math.max(...a.map((x, i) => Math.abs(x - b[i])));
const middle = list => list.sort((a, b) => a - b)[list.length >> 1];

// what a call from the script into the engine costs by itself: it is in the engine's times, a call a step
const from = performance.now();
for (let n = 0; n < 1e5; n++) engine.mj_version();
const call = (performance.now() - from) / 1e5 * 1e3;

const list = fs.readFileSync(scenes, 'utf8').trim().split('\n').map(JSON.parse);
console.log(`engine ${engine.mj_versionString()}, Node ${process.version}, steps of ${(STEP * 1e3).toFixed(3)} ms, median of ${ROUNDS} runs of 3 s by turns`);
console.log(`an empty call into the engine ${call.toFixed(2)} µs; each of its steps is one call`);
console.log('| scene | bodies | lines | own, µs a step | engine, µs a step | engine/own | own, times real time | own off, m | engine off, m |\n|---|---|---|---|---|---|---|---|---|');
const ratios = [];
for (const [n, s] of [...list, six()].entries()) {
  const own = [], other = [];
  let a, b;
  for (let k = 0; k < ROUNDS; k++) {
    for (const first of [k % 2, 1 - k % 2]) first ? own.push((a = ownRun(s, 3, STEP)).took) : other.push((b = engineRun(s, 3, STEP)).took);
  }
  const true_ = engineRun(s, 3, 5e-5).places, steps = Math.round(3 / STEP);
  const [x, y] = [middle(own), middle(other)];
  ratios.push(y / x);
  console.log(`| ${n} ${s.kind} | ${s.bodies.length} | ${s.lines.length} | ${(x / steps * 1e3).toFixed(2)} | ${(y / steps * 1e3).toFixed(2)} | ${(y / x).toFixed(2)} | ${(3e3 / x).toFixed(0)} | ${apart(a.places, true_).toExponential(1)} | ${apart(b.places, true_).toExponential(1)} |`);
}
console.log(`smallest engine/own ${Math.min(...ratios).toFixed(2)}`);
process.exit(0);
