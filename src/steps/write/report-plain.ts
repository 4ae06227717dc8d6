import type { Finding } from '../../base/finding.ts';
import type { GluingPlan } from '../../model/gluing.ts';
import type { PageSet } from '../../model/page.ts';
import type { PlainPiece, PlainStep } from '../../model/plain-piece.ts';
import type { SheetLayout } from '../../model/sheet.ts';
import { gluingFields } from './report-gluing.ts';
import { pagesReport } from './report-paper.ts';
import { foamLayoutReport, sheetsReport } from './report-sheets.ts';

/** A part that no sculpt is parted for. */
export interface ReportPlainPart {
  readonly id: string;
  readonly kind: string;
  readonly name: string;
  readonly transform: readonly number[];
  readonly copies: number;
  readonly pieces: readonly PlainPiece[];
  /** The work on it, in its order. */
  readonly steps: readonly PlainStep[];
}

export interface PlainReportInput {
  readonly projectName: string;
  readonly projectRevision: number;
  readonly plain: readonly PlainPiece[];
  readonly sheets: SheetLayout;
  readonly paper: { readonly name: string; readonly set: PageSet };
  /** Null where it was not worked out. */
  readonly gluing: GluingPlan | null;
  readonly findings: readonly Finding[];
}

/** The report of a project without a sculpt: the same keys and units, less what a sculpt alone has. */
export const makePlainReport = (input: PlainReportInput): Record<string, unknown> => ({
  schemaVersion: 1,
  project: { name: input.projectName, revision: input.projectRevision },
  parts: [],
  layers: [],
  pieces: [],
  plain: input.plain.map(plainReport),
  seams: [],
  sheets: sheetsReport(input.sheets),
  foamLayout: foamLayoutReport(input.sheets),
  ...(input.gluing === null ? {} : { gluing: gluingFields(input.gluing) }),
  findings: input.findings.map((finding) => ({ ...findingReport(finding), where: whereReport(finding) })),
  pages: pagesReport(input.paper.name, input.paper.set),
});

/** What a finding says, without its place. */
export const findingReport = ({ code, severity, text, value, limit, unit }: Finding) => ({
  code,
  severity,
  text,
  value: value ?? null,
  limit: limit ?? null,
  unit: unit ?? null,
});

/** There is no mesh that a finding could point to. */
const whereReport = ({ where: { part, piece, point } }: Finding) => ({
  part: part ?? null,
  piece: piece ?? null,
  seam: null,
  faces: [],
  edges: [],
  vertices: [],
  point: point ?? null,
});

/** Parts that no sculpt is parted for, and the work on them. */
export const plainPartsReport = (parts: readonly ReportPlainPart[]): readonly Record<string, unknown>[] =>
  parts.map(({ pieces, ...part }) => ({ ...part, pieces: pieces.map(({ id }) => id) }));

/** A piece that no sculpt was parted for, without its lines: templates show these. */
export const plainReport = ({
  id,
  number,
  name,
  part,
  foam,
  thicknessMm,
  quantity,
  revision,
  draft,
  areaMm2,
}: PlainPiece) => ({
  id,
  number,
  name,
  part,
  foam,
  thicknessMm,
  quantity,
  revision,
  bend: draft.bend,
  edges: draft.outline.map(({ name: edge, lengthMm, bevelDeg, seam }) => ({
    name: edge,
    lengthMm,
    bevelDeg,
    ...(seam === undefined ? {} : { seam }),
  })),
  holes: draft.holes.length,
  areaMm2,
});
