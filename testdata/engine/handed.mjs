// Lets scenes of core/handover run in a rigid-body engine and reads what the cables pull with, and where the payload is: those with
// cables for a minute after a push, those without for five seconds without one.
// node handed.mjs < scenes.jsonl > handed.jsonl, in a folder where `npm i mujoco-js@0.0.7` was run; a line is {"name", "scene"}.
import { readFileSync } from 'node:fs';
import load from 'mujoco-js';

const engine = await load();
const version = engine.mj_versionString();
const round = x => +x.toPrecision(9);
for (const line of readFileSync(0, 'utf8').split('\n').filter(Boolean)) {
  const { name, scene } = JSON.parse(line);
  engine.FS.writeFile('/scene.xml', scene);
  const model = engine.MjModel.loadFromXML('/scene.xml'), data = new engine.MjData(model);
  const hung = model.ntendon > 0;
  // every free body starts with some cm/s and some 0.6 deg/s
  for (let i = 0; hung && i < model.nv; i++) data.qvel[i] = 0.05 * Math.sin(1 + 2.3 * i) * (i % 6 < 3 ? 1 : 0.2);
  let least = Infinity;
  const cables = Array.from({ length: model.ntendon }, (_, i) => i);
  const pull = () => cables.map(i => Math.max(0, model.tendon_stiffness[i] * (data.ten_length[i] - model.tendon_lengthspring[2 * i + 1])));
  for (let n = 0; n < (hung ? 60000 : 5000); n++) {
    engine.mj_step(model, data);
    least = Math.min(least, ...pull());
  }
  engine.mj_forward(model, data);
  const q = Array.from(data.qpos), tension = pull();
  const turned = 2 * Math.asin(Math.min(1, Math.hypot(q[4], q[5]))) * 180 / Math.PI; // from level, not about the vertical
  const speed = Math.hypot(...data.qvel);
  console.error(`${name}: speed ${speed.toExponential(1)}, moved ${Math.hypot(q[0], q[1], q[2]).toExponential(1)} m, tilted ${turned.toExponential(1)}°, tension ${tension.map(t => t.toFixed(3)).join(' ')}, least ${least.toFixed(2)}`);
  console.log(JSON.stringify({ name, engine: `MuJoCo ${version}`, speed_m_s: round(speed), moved_m: q.slice(0, 3).map(round), tilted_deg: round(turned), tension_n: tension.map(round), scene }));
  data.delete(); model.delete();
}
