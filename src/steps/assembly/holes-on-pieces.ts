import type { Finding } from '../../base/finding.ts';
import { leansText, settingText, SQUARE_DEG, wholeDeg } from '../../base/lean-words.ts';
import type { CutHole } from '../../model/cut-trace.ts';
import type { LetIn } from '../../model/let-in.ts';
import type { SurfaceTrace } from '../../model/trace.ts';
import { cutHoles, type Entering } from './cut-holes.ts';
import type { MeetingHost } from './meeting-host.ts';
import { tracesOnPieces } from './on-pieces.ts';

/** Lines for pieces, by their ids. */
export type LinesOfPieces = ReadonlyMap<string, readonly LetIn[]>;

export interface HolesOnPieces {
  readonly lines: LinesOfPieces;
  /** Those that lie on any of the pieces. */
  readonly holes: readonly CutHole[];
  readonly findings: readonly Finding[];
}

/**
 * The holes of a part in a wall as they are cut in its flat pieces: each with its edge on the face and its edge on the back.
 * @param what      a hole, or the parting of a joint.
 * @param limitDeg  steepest lean of the blade, degrees.
 */
export function holesOnPieces(
  host: MeetingHost,
  entering: Entering,
  what: 'hole' | 'joint',
  limitDeg: number,
): HolesOnPieces {
  const { holes, findings } = cutHoles(host.shell, entering, limitDeg);
  const lines = new Map<string, LetIn[]>();
  const traces: { readonly side: LetIn['side']; readonly hole: CutHole; readonly trace: SurfaceTrace }[] =
    holes.flatMap((hole) => [
      { side: 'face' as const, hole, trace: hole.face },
      ...(hole.back === null ? [] : [{ side: 'back' as const, hole, trace: hole.back }]),
    ]);
  const laid = tracesOnPieces(
    traces.map(({ trace }) => trace),
    host.pieces.map(({ ground }) => ground),
  );
  const met = new Set<CutHole>();
  for (const { piece, trace, closed, points } of laid.traces) {
    const { id, alike } = host.pieces[piece];
    const { side, hole } = traces[trace];
    met.add(hole);
    const text = holeText(hole, entering.name, what, alike, closed);
    lines.set(id, [...(lines.get(id) ?? []), { of: entering.name, what, side, points, closed, text }]);
  }
  return { lines, holes: holes.filter((hole) => met.has(hole)), findings };
}

function holeText(
  { leastBevelDeg, greatestBevelDeg }: CutHole,
  name: string,
  what: 'hole' | 'joint',
  alike: number,
  closed: boolean,
): string {
  const [least, most] = [wholeDeg(leastBevelDeg), wholeDeg(greatestBevelDeg)];
  const isSquare = Math.max(Math.abs(leastBevelDeg), Math.abs(greatestBevelDeg)) < SQUARE_DEG;
  const lean = isSquare ? 'square' : least === most ? settingText(least) : leansText([least, most, least, most]);
  const which = alike > 1 ? `, in one of the ${alike} alone` : '';
  if (what === 'joint') return `${name}: part it here, ${lean}${which}`;
  return `${name} goes through: cut its ${closed ? 'hole' : 'part of the hole'}, ${lean}${which}`;
}
