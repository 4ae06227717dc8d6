import type { Sheet } from '../model/sheet.ts';
import type { Outcome } from '../pipeline/outcome.ts';

/** What a layout on foam takes, one line for each foam, and where cuts that are offered stand; nothing where nothing is laid. */
export function sheetLines({ sheets, project }: Outcome): readonly string[] {
  const laid = project.foams.flatMap(({ id, name }) => {
    const own = (sheets?.sheets ?? []).filter(({ foam }) => foam === id);
    if (own.length === 0) return [];
    const bought = own.filter(({ label }) => label === undefined).length;
    const counts = [
      ...(bought === 0 ? [] : [`${sheetsText(bought)} to buy`]),
      ...(bought === own.length ? [] : [`${sheetsText(own.length - bought)} in hand`]),
    ];
    return [`${name}: ${counts.join(', ')}; ${lastText(own[own.length - 1])}`];
  });
  const splits = sheets?.splits ?? [];
  if (splits.length === 0) return laid;
  const count = splits.length === 1 ? 'a cut is' : `${splits.length} cuts are`;
  return [
    ...laid,
    `${count} offered in report.json (foamLayout.splits): its path may stand among those of a seam file`,
  ];
}

const sheetsText = (count: number): string => `${count} ${count === 1 ? 'sheet' : 'sheets'}`;

function lastText({ fillAlong, widthMm, heightMm, filledMm, offcut }: Sheet): string {
  const filled = `the last is filled to ${filledMm.toFixed(0)} of ${fillAlong === 'y' ? heightMm : widthMm} mm`;
  return offcut === undefined
    ? filled
    : `${filled}, ${Math.floor(offcut.widthMm)} × ${Math.floor(offcut.heightMm)} mm are left`;
}
