// How shapes of known form close in 6 mm foam whose face they are: npm run bench:shapes [-- thickness in mm]
// Panelled things close to rounding; round things the better the finer their facets are, by the order told.
import { ball } from '../reference/handbook/ball.ts';
import { runSolid } from '../reference/handbook/flat-figures.ts';
import { allOf, parted } from '../reference/handbook/parted-tube.ts';
import { elbow, tube, type Solid } from '../reference/handbook/polygon-solids.ts';
import { textTable } from './text-table.ts';

const thicknessMm = Number(process.argv[2] ?? 6);

/** Under this a figure is rounding and has no order. */
const ROUNDING_MM = 1e-9;

interface Shape {
  readonly name: string;
  /** Coarse to fine, each with facets of half the size of the one before; one alone where its panels are the thing itself. */
  readonly solids: readonly Solid[];
}

const bracer = tube(8, 45, 60, () => 200);
const cone = (sides: number): Solid => tube(sides, 80, 40, () => 100);
const doubled = (first: number, make: (count: number) => Solid): readonly Solid[] =>
  [first, 2 * first, 4 * first].map(make);

const SHAPES: readonly Shape[] = [
  { name: 'octagonal bracer, eight panels', solids: [parted(bracer, 8, allOf(8))] },
  { name: 'octagonal bracer, two grooved halves', solids: [parted(bracer, 8, [0, 4])] },
  { name: 'truncated cone, twelve panels', solids: [parted(cone(12), 12, allOf(12))] },
  { name: 'truncated cone, one grooved piece', solids: [parted(cone(12), 12, [0])] },
  { name: 'truncated cone, rolled in one piece', solids: doubled(24, cone) },
  { name: 'truncated cone, rolled in two halves', solids: doubled(24, (n) => parted(cone(n), n, [0, n / 2])) },
  { name: 'elbow of two tubes of eight panels', solids: [elbow(8, 50, 120)] },
  { name: 'elbow of two round tubes R 50', solids: doubled(24, (n) => elbow(n, 50, 120)) },
  { name: 'ball R 100 of twelve gores', solids: doubled(2, (n) => ball(100, 12, n, 6 * n)) },
];

const rows: string[][] = [];
for (const { name, solids } of SHAPES) {
  let before = NaN;
  for (const solid of solids) {
    const { outcome } = await runSolid(solid, { thicknessMm });
    const { worstGapMm, worstOverlapMm, perSeam } = outcome.dryFit ?? {
      worstGapMm: NaN,
      worstOverlapMm: NaN,
      perSeam: [],
    };
    const worst = Math.max(worstGapMm, worstOverlapMm);
    const slip = perSeam.reduce((most, { worstSlipMm }) => Math.max(most, worstSlipMm), 0);
    const hasOrder = before > ROUNDING_MM && worst > ROUNDING_MM;
    rows.push([
      name,
      outcome.pieces?.[0].bendStyle ?? '',
      String(outcome.sculpt?.mesh.triangles.length === undefined ? 0 : outcome.sculpt.mesh.triangles.length / 3),
      facetSize(solid).toFixed(1),
      String(perSeam.length),
      worstGapMm.toExponential(1),
      worstOverlapMm.toExponential(1),
      slip.toExponential(1),
      hasOrder ? Math.log2(before / worst).toFixed(2) : '',
    ]);
    before = worst;
  }
}

const head = ['shape', 'bent', 'triangles', 'facet mm', 'seams', 'gap', 'overlap', 'slip', 'order'];
process.stdout
  .write(`Shapes of known form put together dry in ${thicknessMm} mm foam, mm; facet: the least side of the largest facet
${textTable(head, rows)}`);

/** Of the facet whose shortest side is the longest: how wide the facets are. */
function facetSize({ corners, faces }: Solid): number {
  const side = (a: number, b: number): number => Math.hypot(...[0, 1, 2].map((k) => corners[a][k] - corners[b][k]));
  return faces.reduce((most, face) => {
    const sides = face.map((v, i) => side(v, face[(i + 1) % face.length]));
    return Math.max(most, Math.min(...sides));
  }, 0);
}
