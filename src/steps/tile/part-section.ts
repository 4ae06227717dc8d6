import { inEnglish } from '../../base/paper-language.ts';
import { CAUTION_ENDING, CAUTIONS, cautionsById } from '../../model/cautions.ts';
import type { PartStep, PartWork } from '../../model/part-work.ts';
import type { Drawing } from '../../model/template.ts';
import { moveDrawing } from './block.ts';
import type { Flow, FlowItem } from './flow.ts';
import { LEADING, TYPE_MM } from './pen.ts';
import { wrapText } from './text-fit.ts';

/** Size of the picture of a part, and white between it and the words beside it, mm. */
export const PART_PICTURE_MM = { widthMm: 60, heightMm: 34 } as const;
const BESIDE_MM = 4;

/**
 * The work on parts that no sculpt was parted for, part by part. A caution stands in full before the first part that needs it, and each step names those it
 * needs.
 * @param pictures  of parts, by their ids, {@link PART_PICTURE_MM} large.
 * @param told      ids of cautions that stand on the sheet already.
 */
export function putPartWorks(
  flow: Flow,
  works: readonly PartWork[],
  pictures: ReadonlyMap<string, Drawing>,
  told: readonly string[],
  putCautions: (flow: Flow, texts: readonly string[]) => void,
): void {
  const known = new Set(told);
  for (const { part, name, copies, steps } of works) {
    const picture = pictures.get(part);
    const fresh = steps.flatMap(({ cautions }) => cautions).filter((id) => !known.has(id));
    const isUnder = picture !== undefined && fresh.length === 0;
    flow.heading(
      copies === 1 ? name : `${name}, ${flow.say(`${copies} of it`)}`,
      isUnder ? PART_PICTURE_MM.heightMm + 2 : undefined,
    );
    // The ending stands once, after the first block of the sheet.
    const sentences = cautionsById(fresh).filter((text) => known.size === 0 || text !== CAUTION_ENDING);
    putCautions(flow, sentences);
    for (const id of fresh) known.add(id);
    const texts = steps.map((step, i) => partStepText(step, i + 1, flow.say));
    const beside = picture === undefined ? 0 : howManyBeside(texts, flow.width);
    if (picture !== undefined) flow.put(pictureItem(picture, texts.slice(0, beside), flow.width));
    for (const text of texts.slice(beside)) flow.paragraph(text, {}, STEP_GAP_MM);
  }
}

/** White between two steps, mm. */
const STEP_GAP_MM = 0.8;

const PITCH_MM = TYPE_MM.body * LEADING;

const linesBeside = (text: string, widthMm: number): readonly string[] =>
  wrapText(text, TYPE_MM.body, widthMm - PART_PICTURE_MM.widthMm - BESIDE_MM);

/** How many steps find room beside the picture. */
function howManyBeside(texts: readonly string[], widthMm: number): number {
  let [count, heightMm] = [0, 0];
  for (const text of texts) {
    heightMm += linesBeside(text, widthMm).length * PITCH_MM + (count === 0 ? 0 : STEP_GAP_MM);
    if (heightMm > PART_PICTURE_MM.heightMm) break;
    count += 1;
  }
  return count;
}

/** The picture with the first steps beside it. */
function pictureItem(picture: Drawing, texts: readonly string[], widthMm: number): FlowItem {
  const { widthMm: own, heightMm } = PART_PICTURE_MM;
  return {
    heightMm,
    gapMm: 2,
    draw: (pen, left, top) => {
      const { strokes, words } = moveDrawing(picture, { x: left, y: top - heightMm, turnRad: 0 });
      pen.strokes.push(...strokes);
      pen.words.push(...words);
      let y = top;
      for (const text of texts) {
        for (const line of linesBeside(text, widthMm)) {
          pen.write(line, { x: left + own + BESIDE_MM, y: y - TYPE_MM.body * 1.3 });
          y -= PITCH_MM;
        }
        y -= STEP_GAP_MM;
      }
    },
  };
}

/** `2. Close seam A … (pieces 3, 4). Caution: Knife, Dust.` */
export function partStepText({ text: told, numbers, cautions }: PartStep, number: number, say = inEnglish): string {
  const text = say(told);
  const pieces =
    numbers.length === 0 ? '' : ` (${say(numbers.length === 1 ? 'piece' : 'pieces')} ${numbers.join(', ')})`;
  const titles = CAUTIONS.filter(({ id }) => cautions.includes(id)).map(({ title }) => say(title));
  const sentence = pieces === '' ? text : `${text.replace(/\.$/, '')}${pieces}.`;
  return `${number}. ${sentence}${titles.length === 0 ? '' : ` ${say('Caution')}: ${titles.join(', ')}.`}`;
}
