import type { Finding } from '../base/finding.ts';
import { addRepair, forgetWish, type Command } from '../project/commands.ts';
import { addMarks } from '../project/path-commands.ts';
import type { Bench } from './bench-state.ts';
import { WORDS } from './words.ts';

/** What can be done about a finding at once: a button's label and the command behind it. */
export interface Remedy {
  readonly label: string;
  readonly command: Command;
}

/** The remedy of a finding, or null where only the maker can know. */
export function remedyFor(finding: Finding, bench: Bench): Remedy | null {
  const words = WORDS.remedies;
  if (finding.wish !== undefined) return { label: words.forgetWish, command: forgetWish(finding.wish) };
  switch (finding.code) {
    case 'read/turned-faces':
    case 'read/inside-out':
      return { label: words.turnFaces, command: addRepair({ kind: 'turn-faces' }) };
    case 'read/doubled-faces':
      return { label: words.dropDoubled, command: addRepair({ kind: 'drop-doubled' }) };
    case 'read/empty-faces':
      return { label: words.dropEmpty, command: addRepair({ kind: 'drop-empty' }) };
    case 'read/hole':
    case 'read/open-rim':
      return closing(finding, bench);
    case 'nest/too-large':
      return parting(finding, bench);
    default:
      return null;
  }
}

/** The line that is offered across a piece that is larger than a sheet. */
function parting({ where }: Finding, { pieces }: Bench): Remedy | null {
  const piece = pieces?.pieces.find(({ id }) => id === where.piece);
  const offer = pieces?.cutOffers.find(({ patch, edges }) => patch === piece?.patch && edges.length === 0);
  if (piece === undefined || offer?.marks === undefined) return null;
  return { label: WORDS.remedies.partPiece, command: addMarks(offer.marks) };
}

/** A rim that does not close upon itself cannot be closed by a lid, and its finding says so by not naming the repair. */
function closing(finding: Finding, { sculpt }: Bench): Remedy | null {
  const [edge] = finding.where.edges ?? [];
  if (sculpt === null || edge === undefined || !finding.text.includes('close hole')) return null;
  const [a, b] = edge.map((corner) => sculpt.fileVertex[corner]);
  return { label: WORDS.remedies.closeHole, command: addRepair({ kind: 'close-hole', edge: [a, b] }) };
}
