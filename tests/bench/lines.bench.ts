// Lines on the surface, held against closed forms, each other and the clock: npm run bench:lines [-- number of pairs]
import { readFileSync } from 'node:fs';
import { seededRandom } from '../../src/base/random.ts';
import { runAtOnce, type Stepwise } from '../../src/base/stepwise.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { readSvgPath } from '../../src/geom/svg-path.ts';
import { dot3, vec3, type Vec3 } from '../../src/geom/vec.ts';
import { edgeDistances, pathTo } from '../../src/mesh/edge-distance.ts';
import { edgeLengths } from '../../src/mesh/edge-fold.ts';
import { checkMeshLine } from '../../src/mesh/lines/check-mesh-line.ts';
import { fairLineSteps } from '../../src/mesh/lines/fair-line.ts';
import type { MeshLine, MeshPoint } from '../../src/mesh/lines/mesh-line.ts';
import { distanceInSpace, lineLength, placeOf, trianglesAt } from '../../src/mesh/lines/mesh-point.ts';
import { projectStrokeSteps } from '../../src/mesh/lines/projected-line.ts';
import { spacedSectionSteps } from '../../src/mesh/lines/section-lines.ts';
import { lineOf, nearShortestLine, shortestLineSteps } from '../../src/mesh/lines/shortest-line.ts';
import { smoothCurveSteps } from '../../src/mesh/lines/smooth-curve.ts';
import { shortestWaySteps } from '../../src/mesh/lines/window-search.ts';
import { boxOfPoints3 } from '../../src/mesh/measure.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import { surfaceOf, type Surface } from '../../src/mesh/surface.ts';
import { readModel } from '../../src/steps/read/read-model.ts';
import { meshFromModel, mmPerUnitOf } from '../../src/steps/read/size.ts';
import { expectOk } from '../support/expect-ok.ts';
import { tubeMesh } from '../support/meshes.ts';
import { ballMesh, coneMesh, sheetMesh } from '../support/round-meshes.ts';
import { sampleProject } from '../support/run-sample.ts';
import { randomPoint } from '../support/surface-points.ts';
import { splitTriangles } from './split-triangles.ts';
import { textTable } from './text-table.ts';
import { msText } from './times.ts';

const PAIRS = Number(process.argv[2] ?? 1000);

const percentile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))];
const spread = (times: readonly number[]): string =>
  `${msText(percentile(times, 0.5))} / ${msText(percentile(times, 0.95))} / ${msText(Math.max(...times))}`;
const small = (value: number): string => (value === 0 ? '0' : value.toExponential(1));

async function realMesh(name: string): Promise<Mesh> {
  const bytes = new Uint8Array(readFileSync(new URL(`../reference/meshes/${name}.obj`, import.meta.url)));
  const model = expectOk(await readModel(bytes, `${name}.obj`, QUIET_WORK));
  return meshFromModel(model, expectOk(mmPerUnitOf(model, { by: 'size', axis: 'longest', mm: 300 })));
}

async function helm(parts: number): Promise<Mesh> {
  const { project, pipeline } = await sampleProject('helm');
  const { sculpt } = await pipeline.run(project, QUIET_WORK);
  if (sculpt === null) throw new Error('the helm cannot be read');
  return splitTriangles(sculpt.mesh, parts);
}

/** Which vertices hang together: pairs on separate surfaces have no line. */
function isOneSurface(surface: Surface, p: MeshPoint, q: MeshPoint): boolean {
  return nearShortestLine(surface, p, q).ok;
}

function pairsTable(meshes: readonly (readonly [name: string, mesh: Mesh])[]): string {
  const rows = meshes.map(([name, mesh]) => {
    const surface = surfaceOf(mesh);
    const lengths = edgeLengths(mesh);
    const rand = seededRandom(11);
    const times = { quick: [] as number[], exact: [] as number[] };
    const worst = { methods: 0, traced: 0, symmetric: 0, triangle: 0, straight: 0, edges: 0 };
    let [faults, longer, mostLonger, count] = [0, 0, 0, 0];
    while (count < PAIRS) {
      const [p, q, r] = [0, 1, 2].map(() => randomPoint(surface, rand));
      if (!isOneSurface(surface, p, q) || !isOneSurface(surface, p, r)) continue;
      count += 1;
      let start = performance.now();
      const quick = expectOk(nearShortestLine(surface, p, q));
      times.quick.push(performance.now() - start);
      start = performance.now();
      const { line, lengthMm } = expectOk(runAtOnce(shortestLineSteps(surface, p, q)));
      times.exact.push(performance.now() - start);
      if (checkMeshLine(surface, line).length + checkMeshLine(surface, quick.line).length > 0) faults += 1;
      if (quick.lengthMm > lengthMm * (1 + 1e-9)) {
        longer += 1;
        mostLonger = Math.max(mostLonger, quick.lengthMm / lengthMm - 1);
      }
      const relative = (other: number): number => (lengthMm > 0 ? other / lengthMm - 1 : 0);
      // The windows alone, without the length of the quick line: every tenth pair, for it takes long.
      if (count % 10 === 0) {
        const alone = runAtOnce(shortestWaySteps(surface, p, q));
        worst.methods = Math.max(worst.methods, Math.abs(relative(alone.distance)));
        worst.traced = Math.max(worst.traced, Math.abs(lineOf(surface, alone.legs).lengthMm / alone.distance - 1));
      }
      worst.symmetric = Math.max(
        worst.symmetric,
        Math.abs(relative(expectOk(runAtOnce(shortestLineSteps(surface, q, p))).lengthMm)),
      );
      if (count % 4 === 0) {
        const over = [
          [p, r],
          [r, q],
        ].map(([a, b]) => expectOk(runAtOnce(shortestLineSteps(surface, a, b))).lengthMm);
        worst.triangle = Math.max(worst.triangle, -relative(over[0] + over[1]));
      }
      worst.straight = Math.max(worst.straight, relative(distanceInSpace(surface, p, q)));
      // Between the nearest corners of both, along edges, and to them straight.
      const [v, w] = [p, q].map((one) => mesh.triangles[3 * trianglesAt(surface, one)[0]]);
      const vertex = (number: number): MeshPoint => ({ at: 'vertex', vertex: number });
      const along =
        edgeDistances(mesh, [v], lengths, w).distance[w] +
        distanceInSpace(surface, p, vertex(v)) +
        distanceInSpace(surface, q, vertex(w));
      worst.edges = Math.max(worst.edges, -relative(along));
    }
    return [
      name,
      String(mesh.triangles.length / 3),
      small(worst.methods),
      small(worst.traced),
      small(worst.symmetric),
      small(Math.max(0, worst.triangle)),
      small(Math.max(0, worst.straight)),
      small(Math.max(0, worst.edges)),
      String(faults),
      `${longer} (${(100 * mostLonger).toFixed(2)} %)`,
      spread(times.quick),
      spread(times.exact),
    ];
  });
  return textTable(
    [
      `${PAIRS} pairs on`,
      'triangles',
      'two methods',
      'traced',
      'there and back',
      'triangle ineq.',
      'under space',
      'over edges',
      'faults',
      'quick is longer',
      'quick ms 50/95/100 %',
      'exact ms 50/95/100 %',
    ],
    rows,
  );
}

/** Greatest error against closed forms at three fineness levels, with the order between the last two. */
function closedForms(): string {
  const levels: readonly (readonly [name: string, errors: readonly number[]])[] = [
    ['ball, great circle', [3, 4, 5].map((level) => ballError(ballMesh(level, 100)))],
    ['tube, helix on the round tube', [24, 48, 96].map((sides) => tubeError(sides, false))],
    ['tube, straight on its facets', [24, 48, 96].map((sides) => tubeError(sides, true))],
    ['cone, straight on the round cone', [24, 48, 96].map((sides) => coneError(sides, false))],
    ['cone, straight on its facets', [24, 48, 96].map((sides) => coneError(sides, true))],
    ['sheet, straight', [12, 24, 48].map(sheetError)],
  ];
  return textTable(
    ['greatest relative error', 'coarse', 'half', 'quarter', 'order'],
    levels.map(([name, errors]) => [
      name,
      ...errors.map(small),
      errors[2] < 1e-11 ? 'exact' : Math.log2(errors[1] / errors[2]).toFixed(2),
    ]),
  );
}

const TRIES = 60;
const lengthOf = (surface: Surface, p: MeshPoint, q: MeshPoint): number =>
  expectOk(runAtOnce(shortestLineSteps(surface, p, q))).lengthMm;
const vertexPair = (count: number, rand: () => number): [MeshPoint, MeshPoint] => [
  { at: 'vertex', vertex: Math.floor(rand() * count) },
  { at: 'vertex', vertex: Math.floor(rand() * count) },
];

function ballError(mesh: Mesh): number {
  const surface = surfaceOf(mesh);
  const rand = seededRandom(4);
  let worst = 0;
  for (let i = 0; i < TRIES; i += 1) {
    // Corners all balls have.
    const [p, q] = vertexPair(642, rand);
    const great = 100 * Math.acos(Math.max(-1, Math.min(1, dot3(placeOf(surface, p), placeOf(surface, q)) / 1e4)));
    if (great > 20) worst = Math.max(worst, Math.abs(lengthOf(surface, p, q) / great - 1));
  }
  return worst;
}

function tubeError(sides: number, onFacets: boolean): number {
  const [r, height, rings] = [50, 160, 8];
  const surface = surfaceOf(tubeMesh(sides, r, height, rings));
  const facet = onFacets ? 2 * r * Math.sin(Math.PI / sides) : (2 * Math.PI * r) / sides;
  const rand = seededRandom(4);
  let worst = 0;
  for (let i = 0; i < TRIES; i += 1) {
    const [ring, around] = [Math.floor(rand() * rings) + 1, (Math.floor(rand() * 12) * sides) / 24];
    const closed = Math.hypot(around * facet, (ring * height) / rings);
    const to: MeshPoint = { at: 'vertex', vertex: ring * sides + around };
    worst = Math.max(worst, Math.abs(lengthOf(surface, { at: 'vertex', vertex: 0 }, to) / closed - 1));
  }
  return worst;
}

function coneError(sides: number, onFacets: boolean): number {
  const [r, depth, rings] = [60, 80, 8];
  const surface = surfaceOf(coneMesh(sides, rings, r, depth));
  const slant = Math.hypot(r, depth);
  const facet = onFacets ? 2 * Math.asin((r * Math.sin(Math.PI / sides)) / slant) : (2 * Math.PI * r) / (slant * sides);
  const rand = seededRandom(4);
  let worst = 0;
  for (let i = 0; i < TRIES; i += 1) {
    const [ring, around] = [Math.floor(rand() * rings) + 1, (Math.floor(rand() * 12 + 1) * sides) / 24];
    const [a, b] = [slant, (slant * ring) / rings];
    const closed = Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(around * facet));
    const from: MeshPoint = { at: 'vertex', vertex: 1 + (rings - 1) * sides };
    const to: MeshPoint = { at: 'vertex', vertex: 1 + (ring - 1) * sides + around };
    worst = Math.max(worst, Math.abs(lengthOf(surface, from, to) / closed - 1));
  }
  return worst;
}

function sheetError(n: number): number {
  const shake = seededRandom(9);
  const surface = surfaceOf(sheetMesh(n, n, 100, 100, undefined, () => (40 / n) * (shake() - 0.5)));
  const rand = seededRandom(4);
  let worst = 0;
  for (let i = 0; i < TRIES; i += 1) {
    const [p, q] = [randomPoint(surface, rand), randomPoint(surface, rand)];
    worst = Math.max(worst, Math.abs(lengthOf(surface, p, q) / distanceInSpace(surface, p, q) - 1));
  }
  return worst;
}

/** Time of each kind of line and the longest stretch of it, on one dense sculpt. */
function timesTable(mesh: Mesh): string {
  const surface = surfaceOf(mesh);
  const { min, max } = boxOfPoints3(mesh.positions);
  const middle: Vec3 = vec3((min.x + max.x) / 2, (min.y + max.y) / 2, (min.z + max.z) / 2);
  const size = Math.max(max.x - min.x, max.y - min.y, max.z - min.z);
  const rand = seededRandom(6);
  const lengths = edgeLengths(mesh);
  const clocked = <T>(make: () => Stepwise<T>, told: (value: T) => string): string[] => {
    const [times, stretches]: [number[], number[]] = [[], []];
    let text = '';
    for (let i = 0; i < 7; i += 1) {
      const job = make();
      const start = performance.now();
      for (let [last, most] = [start, 0]; ;) {
        const next = job.next();
        const now = performance.now();
        [most, last] = [Math.max(most, now - last), now];
        if (next.done !== true) continue;
        times.push(now - start);
        stretches.push(most);
        text = told(next.value);
        break;
      }
    }
    return [`${msText(percentile(times, 0.5))} / ${msText(Math.max(...times))}`, msText(Math.max(...stretches)), text];
  };
  const jagged = (): MeshLine => {
    for (;;) {
      const [p, q] = vertexPair(mesh.positions.length / 3, rand);
      if (p.at !== 'vertex' || q.at !== 'vertex') continue;
      const path = pathTo(mesh, edgeDistances(mesh, [p.vertex], lengths, q.vertex), q.vertex);
      if (path.length > 40) return { points: path.map((vertex) => ({ at: 'vertex', vertex })), closed: false };
    }
  };
  const picked = (count: number): MeshPoint[] => {
    const points = [randomPoint(surface, rand)];
    while (points.length < count) {
      const next = randomPoint(surface, rand);
      if (nearShortestLine(surface, points[0], next).ok) points.push(next);
    }
    return points;
  };
  const drawing = expectOk(
    readSvgPath(
      `M${-size / 4} 0a${size / 4} ${size / 4} 0 1 0 ${size / 2} 0a${size / 4} ${size / 4} 0 1 0 ${-size / 2} 0z`,
      0.05,
    ),
  );
  const rows = [
    [
      '40 sections',
      ...clocked(
        () => spacedSectionSteps(surface, { point: middle, normal: vec3(0.2, 0.3, 1) }, size / 40),
        (found) => `${expectOk(found).reduce((sum, { lines }) => sum + lines.length, 0)} lines`,
      ),
    ],
    [
      'circle drawn on',
      ...clocked(
        () =>
          projectStrokeSteps(
            surface,
            { origin: vec3(middle.x, middle.y, max.z + 100), u: vec3(1, 0, 0), v: vec3(0, 1, 0) },
            drawing,
          ),
        ([{ lines }]) =>
          `${lines.length} lines, ${Math.round(lines.reduce((sum, line) => sum + lineLength(surface, line), 0))} mm`,
      ),
    ],
    [
      'curve through 6',
      ...clocked(
        () => smoothCurveSteps(surface, picked(6), true, 0.1),
        (line) => `${expectOk(line).points.length} points`,
      ),
    ],
    [
      'fair within 3 mm',
      ...clocked(
        () => fairLineSteps(surface, jagged(), 3),
        ({ farthestMm, lengthMm }) => `${Math.round(lengthMm)} mm, ${farthestMm.toFixed(2)} mm away`,
      ),
    ],
    [
      'fair within 0.5 mm',
      ...clocked(
        () => fairLineSteps(surface, jagged(), 0.5),
        ({ farthestMm, lengthMm }) => `${Math.round(lengthMm)} mm, ${farthestMm.toFixed(2)} mm away`,
      ),
    ],
  ];
  const pairs = Array.from({ length: 200 }, () => picked(2));
  const each = (find: (p: MeshPoint, q: MeshPoint) => unknown): string => {
    const times = pairs.map(([p, q]) => {
      const start = performance.now();
      find(p, q);
      return performance.now() - start;
    });
    return `${msText(percentile(times, 0.5))} / ${msText(percentile(times, 0.95))} / ${msText(Math.max(...times))}`;
  };
  process.stdout.write(
    `${mesh.triangles.length / 3} triangles, 200 pairs, ms at 50 / 95 / 100 %: quick line ${each((p, q) => nearShortestLine(surface, p, q))}, shortest of all ${each((p, q) => runAtOnce(shortestLineSteps(surface, p, q)))}\n`,
  );
  return textTable(
    [`${mesh.triangles.length / 3} triangles`, 'ms, median / most of 7', 'longest stretch, ms', 'last one'],
    rows,
  );
}

const dense = await helm(5);
process.stdout.write(`${closedForms()}\n`);
process.stdout.write(
  `${pairsTable([
    ['ball', ballMesh(4, 100)],
    ['helm, split', await helm(3)],
    ['spot_low_resolution', await realMesh('spot_low_resolution')],
  ])}\n`,
);
process.stdout.write(timesTable(dense));
