import type { Finding } from '../base/finding.ts';
import { Memo } from '../base/memo.ts';
import { runWithPauses } from '../base/stepwise.ts';
import { shareOfWork, type Work } from '../base/work.ts';
import { pointAt3 } from '../geom/vec.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { Patch } from '../model/patch.ts';
import { FOAM_ELASTICITY, type SeamPull, type Springing } from '../model/springing.ts';
import { borderLoads, type BorderLoads } from '../steps/dryfit/border-loads.ts';
import { standOff } from '../steps/dryfit/let-go.ts';
import { heldShellSteps, type HeldShell } from '../steps/dryfit/shell-energy.ts';
import { byPull, seamPull } from '../steps/dryfit/springing.ts';
import type { CutSculpt } from './outcome.ts';

/** What pieces are held in shape from. */
export interface SpringingJob {
  readonly cut: Pick<CutSculpt, 'shells' | 'chains' | 'patches'>;
  /** One per patch. */
  readonly flats: readonly (FlatPiece | null)[];
  readonly pieces: readonly FoamPiece[];
}

interface Held {
  readonly shell: HeldShell;
  readonly loads: BorderLoads;
  readonly standOff: Float64Array;
}

/** Pieces held are kept for as many as a large sculpt has. */
const KEPT = 64;
/** Pull at the skin of a joint, as a share of Young's modulus, from which it is told: half of what a bend is told at [J]. */
const NOTICE_SHARE = 0.05;
/** Joints named at most: more would say nothing about where to begin. */
const MOST_NAMED = 3;

const { youngNPerMm2, poisson } = FOAM_ELASTICITY;
/** What all figures of springing stand on. */
export const SPRINGING_ASSUMES = `rolled pieces bent cold and held in shape, all elastic, Young’s modulus ${youngNPerMm2} N/mm², Poisson’s ratio ${poisson}`;

/** Springing of a pipeline: a piece is held anew only when its flat shape, its place or its thickness changed. */
export class Springings {
  readonly #held = new Memo<[Patch, FlatPiece, Float64Array, number], Held>(KEPT);
  #count = 0;

  /** How many pieces have been held so far. */
  get heldCount(): number {
    return this.#count;
  }

  /** @throws Cancelled when the work was called off. */
  async of({ cut, flats, pieces }: SpringingJob, work: Work): Promise<Springing> {
    const held: (Held | undefined)[] = cut.patches.map(() => undefined);
    const springs: Springing['pieces'][number][] = [];
    for (const [i, piece] of pieces.entries()) {
      const own = shareOfWork(work, i / pieces.length, (i + 1) / pieces.length);
      await own.pause(0, 'working out what springs back');
      const flat = flats[piece.patch];
      if (flat === null || flat.flipped > 0 || piece.bendStyle !== 'rolled') continue;
      const { neutralPositions } = cut.shells[piece.patch];
      const now = await this.#hold(cut.patches[piece.patch], flat, neutralPositions, piece.thicknessMm, own);
      held[piece.patch] = now;
      const { bendingMj, membraneMj } = now.shell;
      const opensMm = now.standOff.reduce((most, off) => Math.max(most, off), 0);
      springs.push({ piece: piece.id, bendingMj, membraneMj, opensMm });
    }
    const pulls = cut.chains.flatMap(({ id, letter, kind, sides }): SeamPull[] => {
      if (kind === 'open') return [];
      const pulled = sides.flatMap(({ patch, localVertices }) => {
        const one = held[patch];
        if (one === undefined) return [];
        const { loads, standOff } = one;
        return [{ vertices: localVertices, loads, standOff, thicknessMm: cut.shells[patch].thicknessMm }];
      });
      return pulled.length === 0 ? [] : [seamPull({ seam: id, letter }, pulled)];
    });
    return { pieces: springs, seams: byPull(pulls) };
  }

  async #hold(patch: Patch, flat: FlatPiece, neutral: Float64Array, thicknessMm: number, work: Work): Promise<Held> {
    const key: [Patch, FlatPiece, Float64Array, number] = [patch, flat, neutral, thicknessMm];
    const known = this.#held.get(key);
    if (known !== undefined) return known;
    const positions = new Float64Array(3 * patch.meshVertices.length);
    patch.meshVertices.forEach((v, i) => {
      const { x, y, z } = pointAt3(neutral, v);
      positions.set([x, y, z], 3 * i);
    });
    const steps = heldShellSteps(patch.triangles, flat.uv, positions, FOAM_ELASTICITY, thicknessMm);
    const shell = await runWithPauses(steps, () => work.pause(0.5));
    this.#count += 1;
    const off = standOff(patch.triangles, flat.uv, positions);
    return this.#held.set(key, { shell, loads: borderLoads(shell, positions), standOff: off });
  }
}

/** One note that names the joints under most pull; none where no joint is pulled much. */
export function springingFindings(part: string, { seams }: Springing, thicknessMm: number): readonly Finding[] {
  const limit = NOTICE_SHARE * FOAM_ELASTICITY.youngNPerMm2 * thicknessMm;
  const named = seams.filter(({ pullNPerMm }) => pullNPerMm > limit).slice(0, MOST_NAMED);
  if (named.length === 0) return [];
  const letters = named.map(({ letter }) => letter);
  const list = letters.length === 1 ? letters[0] : `${letters.slice(0, -1).join(', ')} and ${letters.at(-1) ?? ''}`;
  const [most] = named;
  return [
    {
      code: 'dryfit/springing',
      severity: 'note',
      text: `The foam wants to spring open most at ${letters.length === 1 ? 'seam' : 'seams'} ${list}: warm and form the pieces there first, or tape the joints while the glue sets (a guide, for foam bent cold that is all elastic).`,
      value: most.pullNPerMm,
      limit,
      unit: 'N/mm',
      where: { part, seam: most.seam, point: most.at },
    },
  ];
}
