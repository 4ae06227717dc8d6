// Shapes by their sizes against the same shapes as meshes laid flat like any sculpt: npm run bench:exact [-- names of shapes]
// Each shape is made as a mesh of 16, 32 and 64 facets to a turn, parted along its seams and run through the chain with the model as the middle
// of the foam, so that nothing is lost but what facets lose. Area of all flat pieces and length of all seams against the closed form: where the
// shape only bends the difference goes with the square of the facet, order 2.
// Where it must be formed, its finished surface and its seams on that are compared: how it is laid flat is a choice.
import { basename } from 'node:path';
import type { Shape } from '../../src/model/shape.ts';
import { shapeFrom } from '../../src/pipeline/shapes.ts';
import { SHAPE_KINDS } from '../../src/steps/shapes/catalogue.ts';
import { layShapeFlat, type LaidShape } from '../reference/handbook/lay-shape.ts';
import { textTable } from './text-table.ts';

const FACETS = [16, 32, 64];

/** Sizes other than the defaults, so that twice the facets are twice as many everywhere. */
const SIZES: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  spherical_cap: [
    ['petals', '8'],
    ['cap_half_angle_deg', '45'],
    ['radius', '100'],
  ],
  sphere_gores: [['gores', '8']],
  dome_gores: [['gores', '8']],
  torus_gores: [['gores', '8']],
  // With a gap, so that turns do not touch: nothing joins them in a mesh.
  helical_strip: [
    ['covered_length', '24'],
    ['overlap', '-4'],
  ],
};

function made(name: string): Shape {
  const shape = shapeFrom(name, SIZES[name] ?? []);
  if (!shape.ok) throw new Error(shape.problem.text);
  return shape.value;
}

const orderOf = (errors: readonly number[]): string => {
  const [coarse, fine] = errors.slice(-2).map(Math.abs);
  if (coarse < 1e-9) return 'exact';
  return Math.log2(coarse / fine).toFixed(2);
};

const percent = (share: number): string => (100 * share).toFixed(5);

const rows: string[][] = [];
/** A row as soon as it is known, and kept for the table. */
function tell(row: string[]): void {
  rows.push(row);
  process.stderr.write(`${row.join('  ')}\n`);
}
const asked = process.argv.slice(2);
for (const { name } of SHAPE_KINDS) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  const shape = made(name);
  if (shape.patches.length === 0 && shape.solid === null) continue;
  const runs: LaidShape[] = [];
  try {
    for (const facets of shape.solid === null ? FACETS : [FACETS[0]]) runs.push(await layShapeFlat(shape, facets));
  } catch (error) {
    tell([name, error instanceof Error ? error.message.slice(0, 60) : String(error)]);
    continue;
  }
  const [areas, seams] = [runs.map((run) => run.areaError), runs.map((run) => run.seamError)];
  const last = runs[runs.length - 1];
  tell([
    name,
    String(last.pieces),
    String(last.triangles),
    ...[0, 1, 2].map((i) => (i < areas.length ? percent(areas[i]) : '')),
    orderOf(areas),
    ...[0, 1, 2].map((i) => (i < seams.length ? percent(seams[i]) : '')),
    orderOf(seams),
    last.worstStretchPct.toFixed(4),
  ]);
}
const head = [
  'shape',
  'pieces',
  'triangles',
  ...FACETS.map((n) => `area % ${n}`),
  'order',
  ...FACETS.map((n) => `seams % ${n}`),
  'order',
  'stretch %',
];
process.stdout.write(`${basename(import.meta.url)}\n${textTable(head, rows)}`);
