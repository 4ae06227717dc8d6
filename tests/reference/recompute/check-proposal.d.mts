/** Figures recomputed from model, seams and flat coordinates. */
export interface ProposalFigures {
  readonly pieces: number;
  readonly lengthMm: number;
  readonly areaMm2: number;
  readonly lengthOverRootArea: number;
  /** Worst piece, the larger of by area and by number, per cent. */
  readonly stretch99Pct: number;
  readonly squash99Pct: number;
  /** Worst of both, drawn between ranks; not held against the limit. */
  readonly between99Pct: number;
}

export interface CheckedProposal {
  readonly faults: readonly string[];
  readonly checks: number;
  readonly pieces: readonly { readonly passes: boolean; readonly text: string }[];
  readonly figures: ProposalFigures;
}

export function checkProposal(modelBytes: Uint8Array, seamFile: unknown, report: unknown): CheckedProposal;
