// How quickly and how exactly the bench finds what is under the pointer: npm run bench:picking [-- triangles=1000000]
// A wavy ball. The tree is built as the worker does it, crosses as buffers, and is taken up as the window does it; rays come from all round
// and pass near the surface. Told: the time to build, to take up, and of a ray, as they are and as on a machine on which the loop of
// `calibration.ts` takes its usual time; and how many rays of some met another triangle than a search through all of them finds.
import { Vector3 } from 'three';
import { buildTree, treeFromSerialised } from '../../src/geom/bvh.ts';
import { seededRandom } from '../../src/base/random.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { FoamBody } from '../../src/viewport/foam-body.ts';
import { FoamPatch } from '../../src/viewport/foam-patch.ts';
import { slowness } from './calibration.ts';
import { wavyBall } from './wavy-ball.ts';

const RAYS = 20_000;
const CHECKED = 40;
const wanted = Number(/triangles=(\d+)/.exec(process.argv.join(' '))?.[1] ?? 1_000_000);
const { positions, triangles } = wavyBall(wanted);
const single = Float32Array.from(positions);
const slow = slowness().times;
const told = (ms: number, unit = 'ms'): string => `${ms.toPrecision(3)} ${unit} (${(ms / slow).toPrecision(3)})`;

const start = performance.now();
const built = buildTree(positions, triangles);
const afterBuild = performance.now();
const sent = built.serialise();
const afterSend = performance.now();
const tree = treeFromSerialised(single, triangles, sent);
const afterTaken = performance.now();

const random = seededRandom(7);
const rays = Array.from({ length: RAYS }, () => {
  const on = (size: number): number => size * (2 * random() - 1);
  const origin = { x: on(300), y: on(300), z: 300 };
  return { origin, direction: { x: on(110) - origin.x, y: on(110) - origin.y, z: on(110) - origin.z } };
});
for (const { origin, direction } of rays.slice(0, 2000)) tree.raycast(origin, direction);
const beforeRays = performance.now();
const hits = rays.map(({ origin, direction }) => tree.raycast(origin, direction));
const rayMs = performance.now() - beforeRays;

/** The nearest of all triangles that a ray meets (Moeller and Trumbore 1997), its distance; Infinity when there is none. */
function nearestOfAll({ origin: o, direction: d }: (typeof rays)[number]): number {
  const length = Math.hypot(d.x, d.y, d.z);
  const [dx, dy, dz] = [d.x / length, d.y / length, d.z / length];
  let nearest = Infinity;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t], 3 * triangles[t + 1], 3 * triangles[t + 2]];
    const [ax, ay, az] = [single[a], single[a + 1], single[a + 2]];
    const [ux, uy, uz] = [single[b] - ax, single[b + 1] - ay, single[b + 2] - az];
    const [vx, vy, vz] = [single[c] - ax, single[c + 1] - ay, single[c + 2] - az];
    const [px, py, pz] = [dy * vz - dz * vy, dz * vx - dx * vz, dx * vy - dy * vx];
    const det = ux * px + uy * py + uz * pz;
    if (det === 0) continue;
    const [sx, sy, sz] = [o.x - ax, o.y - ay, o.z - az];
    const u = (sx * px + sy * py + sz * pz) / det;
    const [qx, qy, qz] = [sy * uz - sz * uy, sz * ux - sx * uz, sx * uy - sy * ux];
    const v = (dx * qx + dy * qy + dz * qz) / det;
    const far = (vx * qx + vy * qy + vz * qz) / det;
    if (u >= 0 && v >= 0 && u + v <= 1 && far >= 0 && far < nearest) nearest = far;
  }
  return nearest;
}
const wrong = rays.slice(0, CHECKED).filter((ray, i) => {
  const all = nearestOfAll(ray);
  const found = hits[i]?.distance ?? Infinity;
  return all !== found && !(Math.abs(all - found) < 1e-6);
}).length;
// The same ball as foam of one piece that came off and lies elsewhere: met through runs of triangles in boxes.
const whole = Uint32Array.from({ length: triangles.length / 3 }, (_, t) => t);
const shape = {
  piece: 0,
  meshTriangles: whole,
  triangles,
  face: single,
  back: single.map((x) => 0.94 * x),
  flat: null,
};
const patch = await FoamPatch.make(shape, QUIET_WORK);
const groups = { groupOfCorner: triangles, count: positions.length / 3 };
const body = new FoamBody([patch], whole.length, groups, true);
const off = new Vector3(0, 40, 0);
await body.place(0, { roll: 0, centre: patch.centre.clone().add(off), turn: patch.shapeTurn }, QUIET_WORK);
const sights = rays.map(({ origin, direction }) => ({
  origin: new Vector3(origin.x, origin.y, origin.z).add(off),
  direction: new Vector3(direction.x, direction.y, direction.z).normalize(),
}));
const beforeFirst = performance.now();
body.hit(sights[0].origin, sights[0].direction);
const firstMs = performance.now() - beforeFirst;
await body.place(0, { roll: 0, centre: patch.centre.clone().add(off), turn: patch.shapeTurn }, QUIET_WORK);
const beforeMoved = performance.now();
body.hit(sights[0].origin, sights[0].direction);
const movedMs = performance.now() - beforeMoved;
for (const { origin, direction } of sights.slice(0, 2000)) body.hit(origin, direction);
const beforeFoam = performance.now();
const foamHits = sights.map(({ origin, direction }) => body.hit(origin, direction));
const foamMs = performance.now() - beforeFoam;
const otherwise = foamHits.filter((hit, i) => Math.abs((hit?.distance ?? 0) - (hits[i]?.distance ?? 0)) > 0.01).length;
const bytes = sent.roots.reduce((sum, { byteLength }) => sum + byteLength, sent.indirect?.byteLength ?? 0);
const checksum = hits.reduce((sum, hit) => sum + (hit?.distance ?? 0), 0);
process.stdout.write(
  [
    `${triangles.length / 3} triangles, ${slow.toFixed(1)} times as slow as usual; in brackets as on the usual machine`,
    `built in ${told(afterBuild - start)}, copied in ${told(afterSend - afterBuild)} (${(bytes / 1e6).toFixed(1)} MB)`,
    `taken up in ${told(afterTaken - afterSend)}`,
    `a ray ${told((1000 * rayMs) / RAYS, 'us')}, ${hits.filter((hit) => hit !== null).length} of ${RAYS} met it`,
    `${wrong} of ${CHECKED} otherwise than a search through all triangles; sum of distances ${checksum.toFixed(3)}`,
    `apart, of foam: the first ray ${told(firstMs)}, the first after it moved ${told(movedMs)}, a ray ${told((1000 * foamMs) / RAYS, 'us')}`,
    `${otherwise} of ${RAYS} otherwise than on the sculpt`,
    '',
  ].join('\n'),
);
