import type { Say } from '../../base/paper-language.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { Paper } from '../../model/foam-stock.ts';
import type { CutThing } from '../../model/foam-strip.ts';
import type { PrinterProfile } from '../../model/printer.ts';
import type { RuledStrip } from '../../model/ruled-strip.ts';
import type { SawTable } from '../../model/saw-settings.ts';
import type { Template } from '../../model/template.ts';
import type { PaperNester } from './paper-nester.ts';

/** What pages are made of. */
export interface PageInput {
  readonly templates: readonly Template[];
  /** Every piece that has a template: for names, revisions and sides. */
  readonly pieces: readonly FoamPiece[];
  /** What else has a template: strips, and pieces that no sculpt was parted for; none if left out. */
  readonly beside?: readonly CutThing[];
  /** Of these, what is cut by the ruler and has no template here; none if left out. */
  readonly ruled?: readonly RuledStrip[];
  /** What is cut or filled at seams beyond the blade, whole sentences; none if left out. */
  readonly seamWork?: readonly string[];
  /** How the saw is set for all of them; left out where it is not to be told. */
  readonly saw?: SawTable;
  readonly paper: Paper;
  /** Ignored for a roll. */
  readonly orientation: 'portrait' | 'landscape';
  /** White edge all round, mm. */
  readonly marginMm: number;
  /** How far neighbouring tiles show the same, mm; 0 for tiles that only meet. */
  readonly overlapMm: number;
  /** The printer that pages are corrected for; left out: they are printed as they are drawn. */
  readonly printer?: PrinterProfile;
  /** The language of the paper, in which the templates are already; English if left out. */
  readonly say?: Say;
  readonly projectName: string;
  readonly projectRevision: number;
  /** Printed as it is given. */
  readonly date?: string;
  /** Whole sentences for the first page, from shared/cautions.json. */
  readonly cautions: readonly string[];
  /** Whole sentences that stand in larger letters before all else on the first page; none if left out. */
  readonly notice?: readonly string[];
  /** On which side the paper lies, one sentence; left out: as the pieces are traced on foam. */
  readonly printedSide?: string;
  /** Finds templates places on fewer pages; left out: they stand on shelves. */
  readonly nester?: PaperNester;
}

/** All that has a template, in the order of numbers. */
export const cutThings = ({ pieces, beside = [] }: PageInput): readonly CutThing[] => [...pieces, ...beside];
