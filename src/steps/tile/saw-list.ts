import { edgeNames, handCutText, settingText } from '../../base/lean-words.ts';
import type { Say } from '../../base/paper-language.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { SawTable } from '../../model/saw-settings.ts';
import type { Flow } from './flow.ts';
import { TYPE_MM } from './pen.ts';
import { CELL_GAP_MM, rowItem } from './table-row.ts';
import { wrapText } from './text-fit.ts';

/** Width of the column of settings, mm: `44.5° out under` and a little. */
const SETTING_MM = 32;

/** A row longer than this goes on in another one, so that it can go on on another page. */
const MOST_LINES = 12;

/**
 * Puts how the saw is set for all pieces: a row for each setting, then what is cut by hand. Nothing where all edges of all pieces are square.
 * @param pieces every piece the table names.
 */
export function putSawList(flow: Flow, table: SawTable, pieces: readonly FoamPiece[]): void {
  const { say } = flow;
  const rows = [...settingRows(table, pieces, say), ...handRow(pieces, say)];
  if (rows.every(({ setting }) => setting === say(settingText(0)))) return;
  const widths = [SETTING_MM, flow.width - SETTING_MM - CELL_GAP_MM];
  const heading = rowItem([[say('set to')], [say('edges, by piece number and letter')]], widths, true);
  flow.heading('The saw');
  flow.paragraph(
    'Set blade or table once and cut every edge beside it: it serves them all within a degree. A template’s own figure may differ by as much.',
    {},
    0.8,
  );
  flow.put(heading);
  for (const { setting, edges } of rows) {
    const lines = edges.flatMap((text) => wrapText(text, TYPE_MM.body, widths[1]));
    for (let from = 0; from < lines.length; from += MOST_LINES) {
      const name = wrapText(from === 0 ? setting : `${setting}, ${say('still')}`, TYPE_MM.body, widths[0]);
      flow.put(rowItem([name, lines.slice(from, from + MOST_LINES)], widths, false), heading);
    }
  }
}

interface SawRow {
  readonly setting: string;
  /** Each begins a line. */
  readonly edges: readonly string[];
}

function settingRows({ settings }: SawTable, pieces: readonly FoamPiece[], say: Say): readonly SawRow[] {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  return settings.map(({ leanDeg, pieces: served }) => ({
    setting: say(settingText(leanDeg)),
    edges: [
      served
        .flatMap(({ piece: id, edges }) => {
          const piece = byId.get(id);
          return piece === undefined
            ? []
            : [`${piece.number}: ${say(edgeNames(edges.map((i) => piece.edges[i].letter)))}`];
        })
        .join(' · '),
    ],
  }));
}

/** What no setting cuts, piece by piece; none where there is nothing of it. */
function handRow(pieces: readonly FoamPiece[], say: Say): readonly SawRow[] {
  const told = pieces.flatMap((piece) => {
    const cuts = (piece.saw?.byHand ?? []).map((cut) =>
      say(handCutText(piece.edges[cut.edge].letter, piece.tracedSide, cut)),
    );
    return cuts.length === 0 ? [] : [`${piece.number}: ${cuts.join('; ')}`];
  });
  return told.length === 0 ? [] : [{ setting: say('by hand'), edges: told }];
}
