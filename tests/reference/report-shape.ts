/** The fields of report.json that the outside checks read, as shared/report.schema.json describes them. */
export type Pair = [number, number];
export type Triple = [number, number, number];

export interface Report {
  readonly scaleMmPerUnit: number;
  readonly modelHash: string;
  readonly model: { readonly triangles: number; readonly areaMm2: number };
  readonly parts: readonly { readonly flatten: unknown; readonly regions: unknown; readonly edgeWishes: unknown }[];
  readonly layers: readonly { readonly shrinkage: ReportShrinkage | null }[];
  readonly pieces: readonly ReportPiece[];
  readonly seams: readonly ReportSeam[];
  readonly dryFit: {
    readonly worstGapMm: number;
    readonly worstOverlapMm: number;
    readonly perSeam: readonly {
      readonly seam: string;
      readonly worstGapMm: number;
      readonly worstOverlapMm: number;
    }[];
  };
  readonly findings: readonly ReportFinding[];
  readonly pages: { readonly paper: string; readonly count: number };
}

export interface ReportShrinkage {
  readonly alongPct: number;
  readonly acrossPct: number;
}

export interface ReportPiece {
  readonly id: string;
  readonly name: string;
  readonly thicknessMm: number;
  readonly tracedSide: 'face' | 'back';
  readonly areaMm2: number;
  readonly flatAreaMm2: number;
  readonly surfaceAreaMm2: number;
  readonly stretchPct: ReportSpread;
  readonly squashPct: ReportSpread;
  readonly energy: number;
  readonly flipped: number;
  readonly overlaps: number;
  readonly solve: { readonly method: string; readonly steps: number; readonly converged: boolean };
  readonly scaleRatio: number;
  readonly grainDeg?: number;
  readonly shrinkage?: ReportShrinkage;
  readonly cutOutlineMm?: readonly Pair[];
  readonly bendStyle: 'rolled' | 'grooved';
  readonly bend?: { readonly outsidePct: number; readonly insidePct: number; readonly radiusMm: number };
  readonly outlineMm: readonly Pair[];
  readonly otherOutlineMm: readonly Pair[];
  readonly neutralOutlineMm: readonly Pair[];
  readonly holesMm: readonly (readonly Pair[])[];
  readonly edges: readonly {
    readonly seam: string;
    readonly side: 0 | 1;
    readonly ring: number;
    readonly from: number;
    readonly to: number;
    readonly stationMm: readonly number[];
    readonly bevelDeg: readonly number[];
    readonly faceOffsetMm: readonly number[];
    readonly backOffsetMm: readonly number[];
  }[];
  readonly flat: {
    readonly uvMm: readonly Pair[];
    readonly neutralMm: readonly Triple[];
    readonly sourceVertices: readonly number[];
    readonly triangles: readonly Triple[];
  };
}

export interface ReportSpread {
  readonly max: number;
  readonly p99: number;
  readonly mean: number;
}

export interface ReportSeam {
  readonly id: string;
  readonly kind: 'butt' | 'lap' | 'rebate' | 'open';
  readonly pieces: readonly string[];
  readonly lengthMm: readonly number[];
  readonly trueLengthMm: number;
  readonly differenceMm: number;
  readonly worstMisalignmentMm: number;
  readonly bevelDeg: { readonly min: number; readonly max: number };
}

export interface ReportFinding {
  readonly code: string;
  readonly severity: string;
  readonly text: string;
  readonly where: { readonly piece: string | null; readonly seam: string | null };
}
