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
        return result.value;
      })),
    );
  }
  for (const seamPrice of [0, SEAM_PRICE]) rows.push(...(await helmRows(seamPrice)));
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
  return `Prices of foam, per cent; the mean energy is the plain one (4 is an isometry) whatever was priced\n${textTable(head, rows)}`;
}

async function rowsOf(name: string, layFlat: (prices: Prices) => Promise<FlatPiece>): Promise<string[][]> {
  const rows: string[][] = [];
  for (const { words, squashPrice, evenOut } of PRICES) {
    const flat = await layFlat({ squashPrice, evenOut });
    rows.push([
      name,
      words,
      ...[flat.stretchPct.max, flat.stretchPct.p99, flat.squashPct.max, flat.squashPct.p99].map((pct) =>
        pct.toFixed(2),
      ),
      scaleRatioOf(flat).toFixed(4),
      flat.energy.toFixed(6),
      String(flat.solve.steps),
      flat.solve.converged ? 'yes' : 'NO',
      String(flat.flipped),
    ]);
  }
  return rows;
}

/** The piece of the sample helm that stretches most at its plain minimum, through the whole chain. */
async function helmRows(seamPrice: number): Promise<string[][]> {
  const { project, pipeline } = await sampleProject('helm');
  const [part] = project.parts;
  const flatsAt = async (wishes: Partial<FlattenWishes>): Promise<readonly (FlatPiece | null)[]> => {
    const flatten = { ...FLATTEN_WISHES, ...wishes };
    const outcome = await pipeline.run({ ...project, parts: [{ ...part, flatten }] }, QUIET_WORK);
    if (outcome.stopped !== null) throw new Error(outcome.stopped.problem.text);
    return outcome.flats ?? [];
  };
  const stretches = (await flatsAt({ seamPrice: 0 })).map((flat) => flat?.stretchPct.max ?? 0);
  const worst = stretches.indexOf(Math.max(...stretches));
  return rowsOf(`helm piece, seam price ${seamPrice}`, async (prices) => {
    const flat = (await flatsAt({ seamPrice, ...prices }))[worst];
    if (flat === null) throw new Error('the helm piece did not come out flat');
    return flat;
  });
}
