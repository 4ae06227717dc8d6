import type { Finding } from '../base/finding.ts';
import type { LetIn } from '../model/let-in.ts';
import type { PlainStep } from '../model/plain-piece.ts';
import type { TravelPlan } from '../model/travel.ts';
import type { LinesOfPieces } from '../steps/assembly/holes-on-pieces.ts';

/** What one join of parts came to. */
export interface JoinOutcome {
  readonly join: string;
  /** Holes that are cut, lines round a seat, or pieces a joint parts. */
  readonly count: number;
  /** Length of all of them on the face, mm; 0 where there is none. */
  readonly lengthMm: number;
  /** Least and greatest lean of their walls from square, degrees; null where nothing is cut. */
  readonly bevelDeg: { readonly min: number; readonly max: number } | null;
  readonly travel?: TravelPlan;
}

/** Gathers what joins leave on pieces, in the work and to tell. */
export class AssemblyLines {
  readonly #lines = new Map<string, LetIn[]>();
  readonly findings: Finding[] = [];
  readonly steps: PlainStep[] = [];
  readonly joins: JoinOutcome[] = [];

  add(lines: LinesOfPieces): void {
    for (const [id, own] of lines) this.#lines.set(id, [...(this.#lines.get(id) ?? []), ...own]);
  }

  get lines(): LinesOfPieces {
    return this.#lines;
  }

  tell(severity: Finding['severity'], code: string, text: string, part: string, more: Partial<Finding> = {}): void {
    this.hand(part, [{ code, severity, text, ...more, where: { ...more.where } }]);
  }

  /** Findings of a part, each once: sheets of a wall are found alike. */
  hand(part: string, findings: readonly Finding[]): void {
    for (const told of findings) {
      const isKnown = this.findings.some(
        ({ code, text, where }) => code === told.code && text === told.text && where.part === part,
      );
      if (!isKnown) this.findings.push({ ...told, where: { ...told.where, part } });
    }
  }
}
