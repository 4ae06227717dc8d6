import { formatMm, formatNumber } from '../../base/format-length.ts';
import type { ClayItem, FinishPlan, FinishStep } from '../../model/finish.ts';
import { bodyText, roman, type Named } from './build-words.ts';

/** cm², without a fraction. */
export const areaText = (mm2: number): string => `${formatNumber(mm2 / 100)}\u00a0cm²`;

/** ml to the next five, litres from one on. */
export const volumeText = (ml: number): string =>
  ml < 1000
    ? `${Math.max(5, 5 * Math.ceil(ml / 5 - 1e-9))}\u00a0ml`
    : `${formatNumber(Math.ceil(ml / 100) / 10, 1)}\u00a0l`;

/** Minutes to an hour and a half, hours to two days, then days. */
export function waitText(minutes: number): string {
  if (minutes <= 90) return `${Math.ceil(minutes)}\u00a0min`;
  const hours = minutes / 60;
  return hours <= 48
    ? `${formatNumber(hours, 1).replace(/\.0$/, '')}\u00a0h`
    : `${formatNumber(hours / 24, 1).replace(/\.0$/, '')}\u00a0days`;
}

/** Tape to the next 10 mm. */
const tapeText = (mm: number): string => formatMm(10 * Math.ceil(mm / 10 - 1e-9));

/** What a step is done to: a piece, a unit, some of the pieces, or everything. */
export function finishBody(
  { pieces, unit }: { readonly pieces: FinishStep['pieces']; readonly unit?: number | undefined },
  named: Named,
  isAll: boolean,
): string {
  if (isAll) return 'everything';
  if (unit !== undefined) return `unit ${roman(unit)}`;
  if (pieces.length === 1) return bodyText({ pieces }, named);
  const numbers = pieces.map((id) => named.get(id)?.number ?? 0).sort((a, b) => a - b);
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last?.[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return `pieces ${runs.map(([a, b]) => (a === b ? `${a}` : b === a + 1 ? `${a}, ${b}` : `${a} to ${b}`)).join(', ')}`;
}

/** What a step does, in one line, without its number. */
export function finishTitle({ work, name, tapeMm, pieces, unit }: FinishStep, named: Named, isAll: boolean): string {
  const body = finishBody({ pieces, unit }, named, isAll);
  switch (work) {
    case 'clay':
      return `Model in ${name} on ${body}`;
    case 'bare':
      return `Tape the edges of ${body} that will be glued: ${tapeText(tapeMm)}`;
    case 'seal':
      return `Seal ${body}: ${name}`;
    case 'prime':
      return `Prime ${body}: ${name}`;
    case 'paint':
      return `Paint ${body} all over: ${name}`;
    case 'clear':
      return `Clear coat over ${body}: ${name}`;
    case 'colour':
      return `${name} on ${body}`;
  }
}

/** What it takes and how long it dries, sentences. */
export function finishTexts(step: FinishStep, items: readonly ClayItem[]): readonly string[] {
  const { work, areaMm2, coats, ml, tapeMm, tapeOn, recoatMin, waitMin } = step;
  if (work === 'bare')
    return ['Glue does not hold on paint: the cut faces stay bare. Take the tape off when the last coat is dry.'];
  if (work === 'clay')
    return [
      ...items.map((item) => `${clayText(item)}.`),
      `In all ${volumeText(ml)} of it, wet. Let each layer dry ${waitText(recoatMin)} in the air of the room, never with heat: ${waitText(waitMin)} until the last can be sanded.`,
    ];
  const taped =
    tapeMm === 0
      ? []
      : [
          `Lay ${tapeText(tapeMm)} of tape along its border${onWhat(tapeOn)}, edge pressed down, and take it off before the last coat is hard.`,
        ];
  const between = coats === 1 ? '' : `, ${waitText(recoatMin)} from one to the next`;
  return [
    ...taped,
    `${areaText(areaMm2)}, ${coats === 1 ? 'one coat' : `${coats} coats`}, ${volumeText(ml)}${between}. Wait ${waitText(waitMin)} in all.`,
  ];
}

/** On which paint; nothing is said of what has no colour of its own. */
function onWhat(names: readonly string[]): string {
  const told = names.filter((name) => name !== '');
  return told.length === 0 ? '' : `, on ${told.join(', ')}`;
}

/** `Seam B, 80 mm, hollow of 20 mm: 6.9 ml, 8.3 mm at its deepest, 2 layers`. */
export function clayText({ what, name, lengthMm, areaMm2, sizeMm, ml, deepestMm, layers }: ClayItem): string {
  const area = `${name}, ${areaText(areaMm2)}`;
  const where = {
    fillet: `Seam ${name}, ${formatMm(Math.round(lengthMm))}, hollow of ${formatMm(sizeMm)}`,
    shape: `${area}, ${formatMm(sizeMm)} high`,
    core: `${area}, ${formatMm(sizeMm)} or more over its core`,
  }[what];
  const deep = what === 'shape' ? '' : `, ${formatNumber(deepestMm, 1)} mm at its deepest`;
  return `${where}: ${ml < 0.1 ? 'under 0.1' : formatNumber(ml, ml < 10 ? 1 : 0)}\u00a0ml dry${deep}, ${layers === 1 ? 'one layer' : `${layers} layers`}`;
}

/** When a group of steps is done. */
export function finishWhen({ beforeStep, afterStep, pieces, unit }: FinishStep, named: Named): string {
  if (beforeStep === null) return 'When all is glued';
  const body = finishBody({ pieces, unit }, named, false);
  const after = afterStep === undefined ? '' : `after step ${afterStep} and `;
  return `${capital(body)}, ${after}before step ${beforeStep} of gluing`;
}

/** Why it is done then; empty when all is glued. */
export function finishReason({ why }: FinishStep): string {
  if (why === undefined) return '';
  return why === 'shut-in' ? 'No brush gets there when all is glued.' : 'Its seams are the border of its colour.';
}

/** Reminds, at a step of gluing, of what is painted before it; empty where nothing is. */
export function paintedBefore({ steps }: Pick<FinishPlan, 'steps'>, gluingStep: number, named: Named): string {
  const own = steps.filter(({ beforeStep }) => beforeStep === gluingStep);
  if (own.length === 0) return '';
  const bodies = [...new Set(own.map((step) => finishBody(step, named, false)))];
  const [first, last] = [own[0].number, own[own.length - 1].number];
  return `Painted beforehand: ${bodies.join(' and ')}, finishing ${first === last ? `step ${first}` : `steps ${first} to ${last}`}.`;
}

/** Steps in a row that belong to one body, with what stands over them. */
export function finishGroups({ steps }: Pick<FinishPlan, 'steps'>): readonly (readonly FinishStep[])[] {
  const groups: FinishStep[][] = [];
  for (const step of steps) {
    const last = groups.at(-1);
    const before = last?.[0];
    const isSame =
      before?.beforeStep === step.beforeStep &&
      (step.beforeStep === null || before?.pieces.some((id) => step.pieces.includes(id)));
    if (last !== undefined && isSame === true) last.push(step);
    else groups.push([step]);
  }
  return groups;
}

/** The rule by which areas follow one another. */
export const MASKING_RULE =
  'Order by common practice: the base first and a finger’s breadth past its borders, then the larger areas, what lies within another after it. Each border is taped once, on the paint that is dry.';

/** What holds where something is painted before it is glued on. */
export const BEFORE_GLUING_RULE =
  'What is painted before it is glued on is warmed and formed first, never after, and is hard before an edge of that step of gluing is brushed, whatever batch it is in.';

/** Waiting of all steps. */
export const waitSummary = ({ waitMin, tapeMm }: Pick<FinishPlan, 'waitMin' | 'tapeMm'>): string =>
  `${tapeMm > 0 ? `${tapeText(tapeMm)} of tape in all. ` : ''}Waiting comes to ${waitText(waitMin)} if nothing dries beside anything else; times at 20 °C, longer where it is cold or damp. If a label says otherwise, it is right.`;

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
