// How far down the energy comes: every reference patch at its plain minimum, beside the best the reference program finds in the same run.
import { PUBLISHED_ENERGY, referencePatch, type BenchPatch } from './bench-patches.ts';
import { layFlat } from './lay-flat.ts';
import { runReference, type ReferenceResult } from './reference-program.ts';
import { textTable } from './text-table.ts';

/** How far over the best an energy may stand (4 = isometry). */
const ENERGY_SLACK = 1e-4;

/** Ways of the reference program that end at the minimum, from three starts. */
const METHODS = ['newton-tutte', 'newton-lscm', 'arap10-newton', 'best'] as const;

/** On its usual setting the reference lengthens the sides of needles by 1e-5 of the mean side; with this it comes down to true lengths. */
const TRUE_SIDES = 1e-11;
const NEEDLES = 'mask-collapsed-1k';

/** @param program  the reference program, or null to compare with the energies published with the patches */
export async function energyTable(program: string | null): Promise<string> {
  const rows: string[][] = [];
  for (const name of Object.keys(PUBLISHED_ENERGY)) {
    const patch = referencePatch(name);
    rows.push(await rowOf(patch, name, program === null ? publishedOf(name) : bestOf(program, patch)));
    if (program !== null && name === NEEDLES) {
      rows.push(await rowOf(patch, `${name}, true sides`, bestOf(program, patch, TRUE_SIDES)));
    }
  }
  const head = [
    'patch',
    'triangles',
    'energy',
    'reference',
    'found by',
    'over it by',
    'flips',
    'steps',
    'holds',
    'checksum',
  ];
  return `Energy at the plain minimum (4 is an isometry); holds: at most ${ENERGY_SLACK} over the reference, settled, no flip\n${textTable(head, rows)}${NEEDLES_NOTE}\n`;
}

const NEEDLES_NOTE = `${NEEDLES} has 134 triangles that are all but empty. The reference lengthens every side a little until none is, and so
measures a slightly different surface; the row "true sides" has it lengthen them by ${TRUE_SIDES} only, and that is the row to compare with.`;

interface Best {
  readonly energy: number;
  readonly by: string;
}

const publishedOf = (name: string): Best => ({ energy: PUBLISHED_ENERGY[name], by: 'published' });

function bestOf(program: string, { objPath, seamPath }: BenchPatch, mollify?: number): Best {
  const run = {
    objPath,
    methods: METHODS,
    reps: 1,
    ...(seamPath === undefined ? {} : { seamPath }),
    ...(mollify === undefined ? {} : { mollify }),
  };
  const found = runReference(program, run).filter(
    (result): result is ReferenceResult & { energy: number } => result.energy !== null && result.flips === 0,
  );
  if (found.length === 0) throw new Error(`${objPath}: the reference program found nothing`);
  const best = found.reduce((a, b) => (b.energy < a.energy ? b : a));
  return { energy: best.energy, by: best.method };
}

async function rowOf({ mesh, seams }: BenchPatch, name: string, best: Best): Promise<string[]> {
  const { figures, checksum } = await layFlat(mesh, seams);
  const over = figures.energy - best.energy;
  const holds = over <= ENERGY_SLACK && figures.flips === 0 && figures.converged;
  return [
    name,
    String(mesh.triangles.length / 3),
    figures.energy.toFixed(7),
    best.energy.toFixed(7),
    best.by,
    over.toExponential(1),
    String(figures.flips),
    String(figures.steps),
    holds ? 'yes' : 'NO',
    checksum,
  ];
}
