import type { Finding } from '../base/finding.ts';
import { addRepair, addSeamEdges, type Command } from '../project/commands.ts';
import type { Project } from '../project/project.ts';
import type { Bench } from './bench-state.ts';
import { WORDS } from './words.ts';

/** What can be done about a finding at once: a button's label and the command behind it. */
export interface Remedy {
  readonly label: string;
  readonly command: Command;
}

/** The remedy of a finding, or null where only the maker can know. */
export function remedyFor(finding: Finding, bench: Bench, _project: Project): Remedy | null {
  const { sculpt } = bench;
  if (sculpt === null) return null;
  const words = WORDS.remedies;
  const file = (vertex: number): number => sculpt.fileVertex[vertex];
  const [edge] = finding.where.edges ?? [];
  const [vertex] = finding.where.vertices ?? [];
  switch (finding.code) {
    case 'read/turned-faces':
    case 'read/inside-out':
      return { label: words.turnFaces, command: addRepair({ kind: 'turn-faces' }) };
    case 'read/doubled-faces':
      return { label: words.dropDoubled, command: addRepair({ kind: 'drop-doubled' }) };
    case 'read/empty-faces':
      return { label: words.dropEmpty, command: addRepair({ kind: 'drop-empty' }) };
    case 'read/hole':
      return edge === undefined ? null : { label: words.closeHole, command: addRepair({ kind: 'close-hole', edge: [file(edge[0]), file(edge[1])] }) };
    case 'read/separate-surfaces':
      return vertex === undefined ? null : { label: words.keepShell, command: addRepair({ kind: 'keep-shell', vertex: file(vertex) }) };
    case 'cut/offer':
      return finding.where.edges === undefined
        ? null
        : { label: words.partAlong, command: addSeamEdges(finding.where.edges.map(([a, b]) => [file(a), file(b)])) };
    default:
      return null;
  }
}
