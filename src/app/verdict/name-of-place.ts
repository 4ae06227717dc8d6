import type { Finding } from '../../base/finding.ts';
import type { Project } from '../../project/project.ts';
import { allCut, type Bench } from '../bench-state.ts';
import { nameOfPart } from '../part-names.ts';
import { WORDS } from '../words.ts';
import { VERDICT_WORDS } from './verdict-words.ts';

/** A finding with its place named once. */
export interface PlacedText {
  /** Its seam, its piece, its part, or the whole job; empty where the sentence itself begins with it. */
  readonly at: string;
  readonly text: string;
}

/**
 * What a finding is about, and its sentence without what that says already.
 * @param text the sentence as it is told.
 */
export function placedText({ where }: Finding, bench: Bench, project: Project | null, text: string): PlacedText {
  const part = where.part === undefined ? null : nameOfPart(project, where.part);
  const bare = part === null ? text : without(`${part}: `, text);
  const seam = bench.pieces?.seams.find(({ id }) => id === where.seam);
  if (seam !== undefined) {
    const at = VERDICT_WORDS.seam(seam.letter);
    return { at: bare.toLowerCase().startsWith(at.toLowerCase()) ? '' : at, text: bare };
  }
  const piece = allCut(bench).find(({ id }) => id === where.piece);
  if (piece === undefined) return { at: part ?? VERDICT_WORDS.wholeJob, text: bare };
  const isNamed = bare.includes(piece.name);
  return {
    at: VERDICT_WORDS.piece(isNamed ? `${piece.number}` : WORDS.chosen.piece(piece.number, piece.name)),
    text: bare,
  };
}

const without = (lead: string, text: string): string => (text.startsWith(lead) ? text.slice(lead.length) : text);
