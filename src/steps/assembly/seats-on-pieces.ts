import { buildTree } from '../../geom/bvh.ts';
import type { Surface } from '../../mesh/surface.ts';
import type { LetIn } from '../../model/let-in.ts';
import { isWithinOther } from './outer-lines.ts';
import { meetingCurves } from './meeting-curves.ts';
import type { LinesOfPieces } from './holes-on-pieces.ts';
import type { MeetingHost } from './meeting-host.ts';
import { tracesOnPieces } from './on-pieces.ts';

export interface SeatOnPieces {
  readonly lines: LinesOfPieces;
  /** Lines round the seat on the surface: 0 where it does not reach it. */
  readonly count: number;
}

/**
 * Where a part sits on a wall, as a line to glue to on the flat pieces.
 * @param entering  the part, or its outline run through the wall.
 * @param side      of the wall it sits on.
 */
export function seatOnPieces(
  { shell, pieces }: MeetingHost,
  name: string,
  entering: Surface,
  side: LetIn['side'],
): SeatOnPieces {
  const surface = side === 'face' ? shell.face : shell.back;
  const { curves } = meetingCurves(
    { surface, tree: buildTree(surface.positions, surface.triangles) },
    { surface: entering, tree: buildTree(entering.positions, entering.triangles) },
  );
  const outer = curves.map(({ onFirst }) => onFirst).filter((one, _, all) => !isWithinOther(surface, one, all));
  const laid = tracesOnPieces(
    outer,
    pieces.map(({ ground }) => ground),
  );
  const lines = new Map<string, LetIn[]>();
  for (const { piece, closed, points } of laid.traces) {
    const { id, alike } = pieces[piece];
    const which = alike > 1 ? `, on one of the ${alike} alone` : '';
    const text = `${name} is glued on inside the dots, on the ${side}${which}`;
    lines.set(id, [...(lines.get(id) ?? []), { of: name, what: 'seat', side, points, closed, text }]);
  }
  return { lines, count: outer.length };
}
