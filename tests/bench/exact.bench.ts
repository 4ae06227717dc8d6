// Shapes by their sizes against the same shapes as meshes that go the way of any sculpt: npm run bench:exact [-- names of shapes]
// Each is made as a mesh of 16, 32 and 64 facets to a turn; panels, which no mesh makes finer, once.
//   surface  the finished surface, parted along its seams and laid flat as the middle of the foam, so that nothing is lost but what facets lose:
//            area of all flat pieces and length of all seams against the closed form. Where the shape must be formed, its finished surface and
//            its seams on that are compared: how it is laid flat is a choice.
//   flat     pieces that lie flat anyway, side by side on a plane: their areas and borders
//   stack    the finished body, stacked of sheets by the larger face: area of all layers
// What misses goes with the square of the facet: order 2. Tables of figures have no surface; they are told with where they are checked.
import { basename } from 'node:path';
import { contentHash } from '../../src/base/hash.ts';
import type { Shape } from '../../src/model/shape.ts';
import { shapeFrom } from '../../src/pipeline/shapes.ts';
import { SHAPE_KINDS } from '../../src/steps/shapes/catalogue.ts';
import { layPiecesFlat } from '../reference/handbook/lay-pieces.ts';
import { layShapeFlat, type LaidShape } from '../reference/handbook/lay-shape.ts';
import { isStacked, stackShape } from '../reference/handbook/stack-shape.ts';
import { textTable } from './text-table.ts';

const FACETS = [16, 32, 64];

type Sizes = readonly (readonly [string, string])[];

/** Sizes other than the defaults, so that twice the facets are twice as many everywhere; a second form of a shape where it has one. */
const SIZES: Readonly<Record<string, readonly Sizes[]>> = {
  spherical_cap: [
    [
      ['petals', '8'],
      ['cap_half_angle_deg', '45'],
      ['radius', '100'],
    ],
  ],
  sphere_gores: [[['gores', '8']]],
  dome_gores: [[['gores', '8']]],
  torus_gores: [[['gores', '8']]],
  box: [[], [['corners', 'mitre']]],
  star: [[], [['height', '30']]],
  half_round_edging: [[], [['ring_radius', '100']]],
  quarter_round_edging: [[], [['ring_radius', '100']]],
  arc: [
    [
      ['radius', '100'],
      ['angle_deg', '90'],
    ],
  ],
  // With a gap, so that turns do not touch: nothing joins them in a mesh.
  helical_strip: [
    [
      ['covered_length', '24'],
      ['overlap', '-4'],
    ],
  ],
  tapered_helical_strip: [
    [
      ['covered_length', '40'],
      ['overlap', '-4'],
    ],
  ],
};

/** What has no surface: figures alone, and where those are held against meshes or closed forms. */
const FIGURES_ALONE: Readonly<Record<string, string>> = {
  platonic_solids: 'a table of the five solids, each of which is a shape above',
  archimedean_solids: 'a table of the solids, each of which is a shape above',
  bevel: 'a cut, no surface: two panels through the chain in handbook/bevels.test.ts',
  fold_groove: 'a cut, no surface: panels on hinges through the chain in handbook/hinges.test.ts',
  empirical_bend: 'a rule of thumb: held against the chain in handbook/bends.test.ts',
  bend_strain: 'a share, no surface: a bent plate through the chain in handbook/bends.test.ts',
  angle_defects: 'sums of angles: of meshes in handbook/more-developments.test.ts',
};

/** Fewer than this share is rounding. */
const ROUNDING = 1e-11;

function orderOf(errors: readonly number[]): string {
  const sizes = errors.map(Math.abs);
  if (Math.max(...sizes) < ROUNDING) return 'exact';
  return sizes.length < 2 ? '' : Math.log2(sizes[sizes.length - 2] / sizes[sizes.length - 1]).toFixed(2);
}

const percent = (share: number): string => (Math.abs(share) < ROUNDING ? '0' : (100 * share).toFixed(5));

interface Way {
  readonly route: 'surface' | 'flat' | 'stack';
  readonly of: string;
  readonly run: (facets: number) => LaidShape | Promise<LaidShape>;
}

/** Every way a shape goes: what its surface does not cover lies flat. */
function waysOf(shape: Shape): Way[] {
  if (isStacked(shape)) return [{ route: 'stack', of: '', run: (facets) => stackShape(shape, facets) }];
  const hasSurface = shape.patches.length > 0 || shape.solid !== null;
  const covered = new Set(shape.patches.map(({ piece }) => piece));
  const rest = shape.pieces.filter(({ name }) => shape.solid === null && !covered.has(name));
  return [
    ...(hasSurface
      ? [{ route: 'surface' as const, of: '', run: (facets: number) => layShapeFlat(shape, facets) }]
      : []),
    ...(rest.length === 0
      ? []
      : [
          {
            route: 'flat' as const,
            of: hasSurface ? `: ${rest.map(({ name }) => name).join(', ')}` : '',
            run: (facets: number) => layPiecesFlat(rest, facets),
          },
        ]),
  ];
}

const isRound = ({ patches, pieces }: Shape): boolean =>
  patches.length > 0 ||
  pieces.some(({ outline, holes }) =>
    [outline, ...holes].flat().some(({ segments }) => segments.some(({ kind }) => kind !== 'line')),
  );

const rows: string[][] = [];
const sums: string[] = [];
/** A row as soon as it is known, and kept for the table. */
function tell(row: string[]): void {
  rows.push(row);
  process.stderr.write(`${row.join('  ')}\n`);
}

async function rowOf(name: string, shape: Shape, { route, of, run }: Way): Promise<void> {
  const runs: LaidShape[] = [];
  for (const facets of isRound(shape) ? FACETS : FACETS.slice(0, 1)) runs.push(await run(facets));
  const [areas, seams] = [runs.map((one) => one.areaError), runs.map((one) => one.seamError)];
  const last = runs[runs.length - 1];
  const figures = runs.flatMap((one) => [
    one.pieces,
    one.triangles,
    one.areaError.toFixed(10),
    one.seamError.toFixed(10),
  ]);
  const checksum = (await contentHash(new TextEncoder().encode(figures.join(' ')))).slice(0, 8);
  sums.push(checksum);
  tell([
    `${name}${of}`,
    route,
    String(last.pieces),
    String(last.triangles),
    ...[0, 1, 2].map((i) => (i < areas.length ? percent(areas[i]) : '')),
    orderOf(areas),
    ...[0, 1, 2].map((i) => (i < seams.length ? percent(seams[i]) : '')),
    orderOf(seams),
    last.worstStretchPct.toFixed(4),
    checksum,
  ]);
}

const asked = process.argv.slice(2);
const left: string[] = [];
for (const { name } of SHAPE_KINDS) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  for (const sizes of SIZES[name] ?? [[]]) {
    const made = shapeFrom(name, sizes);
    if (!made.ok) throw new Error(made.problem.text);
    const ways = waysOf(made.value);
    if (ways.length === 0) left.push(`${name}: ${FIGURES_ALONE[name] ?? 'no surface, and nobody says why'}`);
    const told =
      sizes.length > 0 && (SIZES[name] ?? []).length > 1 ? ` ${sizes.map((one) => one.join('=')).join(' ')}` : '';
    for (const way of ways) await rowOf(`${name}${told}`, made.value, way);
  }
}
const head = [
  'shape',
  'route',
  'pieces',
  'triangles',
  ...FACETS.map((n) => `area % ${n}`),
  'order',
  ...FACETS.map((n) => `seams % ${n}`),
  'order',
  'stretch %',
  'checksum',
];
const whole = (await contentHash(new TextEncoder().encode(sums.join(' ')))).slice(0, 8);
process.stdout.write(
  `${basename(import.meta.url)}\n${textTable(head, rows)}checksum of all ${whole}\n${left.map((one) => `${one}\n`).join('')}`,
);
