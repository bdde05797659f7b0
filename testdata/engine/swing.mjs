// Twenty scenes without control in a rigid-body engine: free swing, a line cut, taut after slack, bodies above bodies.
// node swing.mjs > swing.jsonl, in a folder where `npm i mujoco-js@0.0.7` was run.
import load from 'mujoco-js';
import { G, chance, ranges, xml, start } from './scene.mjs';

const engine = await load();
const STEP = 5e-5, SPAN = 3, EVERY = 0.25;

const draw = chance(20261125), { between, point } = ranges(draw);

// Bodies: the payload first. Lines from a body or the ground (-1) to a body; all undamped.
function make(n) {
  const kind = ['swing', 'cut', 'slack', 'flown'][n % 4];
  const mass = between(2, 8), size = [between(0.3, 1), between(0.3, 0.8), between(0.1, 0.4)];
  const inertia = [0, 1, 2].map(a => +(mass / 12 * (size[(a + 1) % 3] ** 2 + size[(a + 2) % 3] ** 2)).toPrecision(6));
  const bodies = [{ mass, inertia, at: [0, 0, 0], velocity: point(0.6, 0.6, 0.2), spin: point(0.5, 0.5, 0.5) }];
  const lines = [], count = 3 + n % 3;
  for (let i = 0; i < count; i++) {
    const angle = 2 * Math.PI * (i + 0.3 * draw()) / count;
    const on = [+(size[0] * 0.5 * Math.cos(angle)).toFixed(4), +(size[1] * 0.5 * Math.sin(angle)).toFixed(4), +(size[2] / 2).toFixed(4)];
    const top = [+(on[0] * between(1.2, 1.8)).toFixed(4), +(on[1] * between(1.2, 1.8)).toFixed(4), between(1.2, 2)];
    const length = Math.hypot(...top.map((x, a) => x - on[a]));
    const stiffness = +(mass * G / count / between(0.005, 0.02)).toFixed(2);
    if (kind === 'flown') { // a heavy body above, that is free as well: everything falls together, at first apart
      bodies.push({ mass: between(0.5, 1.5), inertia: [0.01, 0.012, 0.02], at: top, velocity: point(1, 1, 1), spin: [0, 0, 0] });
      lines.push({ a: bodies.length - 1, b: 0, at_a: [0, 0, 0], at_b: on, length: +(length * between(0.99, 1.02)).toFixed(5), stiffness });
      continue;
    }
    const rest = kind === 'slack' ? length * between(1.005, 1.03) : length - 0.004;
    lines.push({ a: -1, b: 0, at_a: top, at_b: on, length: +rest.toFixed(5), stiffness });
  }
  const cut = kind === 'cut' ? { line: n % count, time: 0.8 } : null;
  return { kind, bodies, lines, cut };
}

for (let n = 0; n < 20; n++) {
  const s = make(n);
  engine.FS.writeFile('/scene.xml', xml(s, STEP));
  const model = engine.MjModel.loadFromXML('/scene.xml'), data = new engine.MjData(model);
  start(data, s);
  const states = [];
  const per = Math.round(EVERY / STEP), end = Math.round(SPAN / STEP);
  for (let k = 0; k <= end; k++) {
    if (s.cut && k === Math.round(s.cut.time / STEP)) model.tendon_stiffness[s.cut.line] = 0;
    if (k % per === 0) states.push({ time: k * STEP, q: Array.from(data.qpos).map(x => +x.toPrecision(10)), v: Array.from(data.qvel).map(x => +x.toPrecision(10)) });
    engine.mj_step(model, data);
  }
  console.log(JSON.stringify({ ...s, states }));
  data.delete(); model.delete();
}
