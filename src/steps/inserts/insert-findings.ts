import type { Finding } from '../../base/finding.ts';
import { formatMm, formatPlain } from '../../base/format-length.ts';
import type { InsertPlan } from '../../model/insert.ts';
import { LEAST_LEFT_MM } from './least-left.ts';
import type { Thing } from './thing.ts';

/** What is to tell of a thing and its wall, wherever it stands. */
export function insertFindings(plan: Omit<InsertPlan, 'findings'>, thing: Thing, wall: number): readonly Finding[] {
  return [
    ...depthFindings(plan, wall),
    ...wayFindings(plan),
    ...panelFindings(plan, thing, wall),
    ...sheetFindings(plan, thing),
  ];
}

const tell = (
  severity: Finding['severity'],
  code: string,
  text: string,
  figures: Pick<Finding, 'value' | 'limit' | 'unit'> = {},
): Finding => ({ code, severity, text, ...figures, where: {} });

function depthFindings(
  { name, pocketMm, leftMm, frames, framesMm, side }: Omit<InsertPlan, 'findings'>,
  wall: number,
): Finding[] {
  const figures = { value: pocketMm, limit: wall + framesMm - LEAST_LEFT_MM, unit: 'mm' };
  if (frames > 0)
    return [
      tell(
        'note',
        'insert/framed',
        `The pocket of the ${name} is ${formatMm(pocketMm)} deep and the wall ${formatMm(wall)}: ${frames === 1 ? 'a frame' : `${frames} frames`} on the ${side}, ${formatMm(framesMm)} in all, ${frames === 1 ? 'makes' : 'make'} up for it and ${formatMm(leftMm)} of the wall stay behind it.`,
      ),
    ];
  if (pocketMm > wall)
    return [
      tell(
        'warning',
        'insert/deeper-than-wall',
        `The pocket of the ${name} is ${formatMm(pocketMm)} deep and the wall only ${formatMm(wall)}: it goes right through by ${formatMm(pocketMm - wall)}. Let it in from the back with frames, or choose a flatter one.`,
        figures,
      ),
    ];
  return pocketMm > 0 && leftMm < LEAST_LEFT_MM
    ? [
        tell(
          'warning',
          'insert/thin-left',
          `Behind the pocket of the ${name} ${formatMm(leftMm)} of foam stay, under ${formatMm(LEAST_LEFT_MM)}: it shows through and tears. Make the pocket shallower, or the wall thicker.`,
          figures,
        ),
      ]
    : [];
}

function wayFindings({ name, wish, wayIn, cell }: Omit<InsertPlan, 'findings'>): Finding[] {
  if (wish.kind === 'battery' && wayIn === 'closed')
    return [
      tell(
        'warning',
        'insert/no-way-in',
        `The ${name} has no way in: an empty cell must come out, and one that gets hot at once. Give it a lid.`,
      ),
    ];
  if (wish.kind === 'battery' && wayIn === 'open' && (cell === 'button' || cell === 'lithium-button'))
    return [
      tell(
        'warning',
        'insert/open-button-cell',
        `The ${name} lies open: a child must not get at a button cell. Give it a lid that needs a tool.`,
      ),
    ];
  if (wish.kind === 'lamp' && wayIn === 'closed')
    return [
      tell(
        'note',
        'insert/lamp-closed',
        `The ${name} is closed in: foam keeps its heat, and it cannot be changed. Run it an hour before it is closed.`,
      ),
    ];
  if (wish.kind === 'magnet' && wish.pole === undefined)
    return [
      tell(
        'note',
        'insert/no-pole',
        `Nobody has said which pole of the ${name} looks out: hold it to its other half before the glue, and mark it.`,
      ),
    ];
  return [];
}

function panelFindings(
  { name, wish }: Omit<InsertPlan, 'findings'>,
  { panelMm, depthMm }: Thing,
  wall: number,
): Finding[] {
  if (wish.kind !== 'switch') return [];
  const findings: Finding[] = [];
  if (depthMm > wall)
    findings.push(
      tell(
        'note',
        'insert/room-behind',
        `The ${name} is ${formatMm(depthMm)} deep: ${formatMm(depthMm - wall)} must be free behind the wall, and its wires besides.`,
        { value: depthMm - wall, unit: 'mm' },
      ),
    );
  const isThick = panelMm !== null && (wall < panelMm[0] || wall > panelMm[1]);
  if (isThick && wish.hasPlate === false)
    findings.push(
      tell(
        'warning',
        'insert/panel',
        `The ${name} holds on to a panel of ${formatPlain(panelMm[0])} to ${formatMm(panelMm[1])}, and the wall is ${formatMm(wall)}: give it a plate.`,
        { value: wall, limit: panelMm[1], unit: 'mm' },
      ),
    );
  return findings;
}

/** Pieces that no sheet is right for have an outline alone. */
const sheetFindings = ({ name, pieces }: Omit<InsertPlan, 'findings'>, { depthMm, panelMm }: Thing): Finding[] =>
  pieces
    .filter(({ thicknessMm }) => thicknessMm === null)
    .map(({ key }) =>
      tell(
        'note',
        'insert/no-sheet',
        key === 'pane'
          ? `The pane of the ${name} is ${formatMm(depthMm)} thick, and none of its sheets is: cut it by its outline from clear sheet, or add that sheet to the stock and to this part, then it is laid out with the rest.`
          : `The plate of the ${name} is a stiff sheet of ${formatPlain((panelMm ?? [1, 3])[0])} to ${formatMm((panelMm ?? [1, 3])[1])}, and none of its sheets is: cut it by its outline, or add such a sheet to the stock and to this part.`,
      ),
    );
