// What foam's own prices do: squash dearer than stretch, and the worst spot evened out, each against the plain minimum.
import type { FlatPiece } from '../../src/model/flat-piece.ts';
import { FLATTEN_WISHES, type FlattenWishes } from '../../src/model/flatten-settings.ts';
import { SEAM_PRICE } from '../../src/base/tolerance.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { flattenPatch } from '../../src/steps/flatten/flatten-patch.ts';
import { sampleProject } from '../support/run-sample.ts';
import { referencePatch } from './bench-patches.ts';
import { scaleRatioOf } from './flat-figures.ts';
import { freshPatches } from './lay-flat.ts';
import { textTable } from './text-table.ts';

const PATCHES = ['mask-1k', 'mask-5k', 'hemisphere-2k', 'cap45-2k', 'spot-flank'] as const;

type Prices = Pick<FlattenWishes, 'squashPrice' | 'evenOut'>;

const PRICES: readonly (Prices & { readonly words: string })[] = [
  { words: 'plain minimum', squashPrice: 1, evenOut: false },
  ...[2, 3, 5, 10].map((squashPrice) => ({ words: `squash ${squashPrice}`, squashPrice, evenOut: false })),
  { words: 'evened out', squashPrice: 1, evenOut: true },
  { words: 'squash 3, evened out', squashPrice: 3, evenOut: true },
];

export async function costTable(): Promise<string> {
  const rows: string[][] = [];
  for (const name of PATCHES) {
    const { mesh, seams } = referencePatch(name);
    const [patch] = freshPatches(mesh, seams);
    rows.push(
      ...(await rowsOf(name, async (prices) => {
        const result = await flattenPatch(patch, mesh.positions, prices, QUIET_WORK);
        if (!result.ok) throw new Error(result.problem.text);
        return [result.value];
      })),
    );
  }
  rows.push(...(await sampleRows('helm', 0)));
  for (const name of ['helm', 'shoulder-plate', 'bracer']) rows.push(...(await sampleRows(name, SEAM_PRICE)));
  const head = [
    'piece',
    'priced',
    'stretch max',
    'p99',
    'squash max',
    'p99',
    'scale ratio',
    'mean energy',
    'steps',
    'settled',
    'flips',
  ];
  return `Prices of foam, per cent; of a sample each figure is that of the piece where it is greatest
The mean energy is the plain one (4 is an isometry) whatever was priced\n${textTable(head, rows)}`;
}

/** @param layFlat  all pieces at these prices; each figure is told of the piece where it is greatest */
async function rowsOf(name: string, layFlat: (prices: Prices) => Promise<readonly FlatPiece[]>): Promise<string[][]> {
  const rows: string[][] = [];
  for (const { words, squashPrice, evenOut } of PRICES) {
    const flats = await layFlat({ squashPrice, evenOut });
    const most = (figure: (flat: FlatPiece) => number): number => Math.max(...flats.map(figure));
    rows.push([
      name,
      words,
      most(({ stretchPct }) => stretchPct.max).toFixed(2),
      most(({ stretchPct }) => stretchPct.p99).toFixed(2),
      most(({ squashPct }) => squashPct.max).toFixed(2),
      most(({ squashPct }) => squashPct.p99).toFixed(2),
      most(scaleRatioOf).toFixed(4),
      most(({ energy }) => energy).toFixed(6),
      String(most(({ solve }) => solve.steps)),
      flats.every(({ solve }) => solve.converged) ? 'yes' : 'NO',
      String(flats.reduce((sum, { flipped }) => sum + flipped, 0)),
    ]);
  }
  return rows;
}

/** All pieces of a sample in 6 mm foam, through the whole chain. */
async function sampleRows(sample: string, seamPrice: number): Promise<string[][]> {
  return rowsOf(`sample ${sample}, seam price ${seamPrice}`, async (prices) => {
    const { project, pipeline } = await sampleProject(sample);
    const [part] = project.parts;
    const flatten: FlattenWishes = { ...FLATTEN_WISHES, seamPrice, ...prices };
    const outcome = await pipeline.run({ ...project, parts: [{ ...part, flatten }] }, QUIET_WORK);
    if (outcome.stopped !== null) throw new Error(outcome.stopped.problem.text);
    return (outcome.flats ?? []).filter((flat) => flat !== null);
  });
}
