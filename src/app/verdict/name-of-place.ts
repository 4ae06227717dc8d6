import type { Finding } from '../../base/finding.ts';
import type { Project } from '../../project/project.ts';
import { allCut, type Bench } from '../bench-state.ts';
import { nameOfPart } from '../part-names.ts';
import { WORDS } from '../words.ts';
import { VERDICT_WORDS } from './verdict-words.ts';

/** What a finding is about, in words: its seam, its piece, its part, or the whole job. */
export function nameOfPlace({ where }: Finding, bench: Bench, project: Project | null): string {
  const seam = bench.pieces?.seams.find(({ id }) => id === where.seam);
  if (seam !== undefined) return VERDICT_WORDS.seam(seam.letter);
  const piece = allCut(bench).find(({ id }) => id === where.piece);
  if (piece !== undefined) return VERDICT_WORDS.piece(WORDS.chosen.piece(piece.number, piece.name));
  const part = where.part === undefined ? null : nameOfPart(project, where.part);
  return part ?? VERDICT_WORDS.wholeJob;
}
