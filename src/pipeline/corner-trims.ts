import { clipPlaces, type Finding } from '../base/finding.ts';
import { Memo } from '../base/memo.ts';
import { shareOfWork, type Work } from '../base/work.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { SeamChain } from '../model/seams.ts';
import { cornerCuts } from '../steps/dryfit/corner-cuts.ts';
import { withCornersCut } from '../steps/dryfit/cut-corners.ts';
import { joinedSeams } from '../steps/dryfit/dry-fit.ts';
import { seamEnds, type SeamEnd } from '../steps/dryfit/seam-ends.ts';
import { isOnePlane } from '../steps/foam/panel-corners.ts';
import type { PatchBend } from '../steps/foam/part-bends.ts';
import { revisionCode } from '../steps/foam/revision.ts';
import { bentSeam, type DryFitJob } from './dry-fit.ts';

/** Results kept: a maker goes a few steps back and forth. */
const KEPT = 8;

/** Seams that end at a corner of fewer than this leave no two pieces there without a seam between them. */
const LEAST_SEAMS = 4;

/** Pieces cut back at corners where they would run into pieces they share no seam with. */
export class CornerTrims {
  readonly #trimmed = new Memo<unknown[], readonly FoamPiece[]>(KEPT);

  /** @returns the same pieces where nothing is in the way. */
  async of(job: DryFitJob, work: Work): Promise<readonly FoamPiece[]> {
    const { cut, bends, pieces, seams, tooMuchPct } = job;
    const key = [cut.mesh, cut.shells, bends, pieces, seams, tooMuchPct];
    const known = this.#trimmed.get(key);
    return known ?? this.#trimmed.set(key, await trimmed(job, work));
  }
}

async function trimmed(job: DryFitJob, work: Work): Promise<readonly FoamPiece[]> {
  const { mesh, chains } = job.cut;
  const crowded = crowdedVertices(chains);
  if (crowded.size === 0) return job.pieces;
  const ending = new Set(chains.filter((chain) => endsOf(chain).some((v) => crowded.has(v))).map(({ id }) => id));
  const joined = joinedSeams(job.pieces, job.seams).filter(({ seam }) => ending.has(seam.id));
  const ends: SeamEnd[] = [];
  for (const [i, one] of joined.entries()) {
    await shareOfWork(work, i / joined.length, 1).pause(0, 'making room at corners');
    ends.push(...seamEnds(one.seam, bentSeam(job, one)).filter(({ vertex }) => crowded.has(vertex)));
  }
  const bent = new Set(job.pieces.filter(({ patch }) => isBent(job.bends.patches[patch])).map(({ id }) => id));
  const cuts = cornerCuts(ends, mesh.positions, (id) => bent.has(id));
  return cuts.length === 0
    ? job.pieces
    : job.pieces.map((piece) => {
        const made = withCornersCut(piece, cuts);
        return made === piece ? piece : { ...made, revision: revisionCode([piece.revision, made.cornerCuts]) };
      });
}

const isBent = ({ choice, surface }: PatchBend): boolean => choice.style !== 'grooved' && !isOnePlane(surface);

const endsOf = ({ closed, vertices }: SeamChain): readonly number[] =>
  closed ? [] : [vertices[0], vertices[vertices.length - 1]];

function crowdedVertices(chains: readonly SeamChain[]): ReadonlySet<number> {
  const counts = new Map<number, number>();
  for (const v of chains.flatMap(endsOf)) counts.set(v, (counts.get(v) ?? 0) + 1);
  return new Set([...counts].flatMap(([v, count]) => (count >= LEAST_SEAMS ? [v] : [])));
}

/** What was cut off corners, and the hole that may be left: one note for all of a sheet. */
export function cornerCutFindings(part: string, pieces: readonly FoamPiece[]): readonly Finding[] {
  const cuts = pieces
    .flatMap(({ name, cornerCuts: own = [] }) => own.map((cut) => ({ name, ...cut })))
    .sort((p, q) => q.cutMm - p.cutMm);
  if (cuts.length === 0) return [];
  const [worst] = cuts;
  const others = cuts.length === 1 ? '' : `, the most of ${cuts.length} such corners`;
  const wide = Math.max(...cuts.map(({ wideMm }) => wideMm));
  return [
    {
      code: 'foam/corner-cut',
      severity: 'note',
      text: `A corner of ${worst.name} is cut back ${worst.cutMm.toFixed(1)} mm${others}, because a piece it shares no seam with would be in its way: cut it as drawn, and fill what stays open there, at most ${wide.toFixed(1)} mm wide.`,
      value: worst.cutMm,
      unit: 'mm',
      where: { part, vertices: clipPlaces([...new Set(cuts.map(({ vertex }) => vertex))]) },
    },
  ];
}
