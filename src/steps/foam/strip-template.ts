import { settingText } from '../../base/lean-words.ts';
import { inEnglish } from '../../base/paper-language.ts';
import { boxOfPoints, joinBoxes, type Box2 } from '../../geom/ring.ts';
import type { FoamStrip } from '../../model/foam-strip.ts';
import { SMALLEST_WORDS_MM } from '../../model/line-style.ts';
import type { Stroke, Template } from '../../model/template.ts';
import { wordsOnFoam } from './foam-drawing.ts';
import { isOneWidth, widthText } from './steep-words.ts';
import { foamText } from './template-words.ts';
import { blockOf, boxAt, wordsInBox } from './word-block.ts';

/** Height of a strip's name, mm. */
const NAME_MM = 3.5;

/** Between the strip and its words, mm. */
const CLEARANCE_MM = 2;

/**
 * A strip in true size as it is traced: its face at the widest place, the back's edges beside it where they lean, and its words under it, for it
 * is too narrow to hold them. y up, mm, from the face's lower left corner.
 *
 *     ┌───────────────────────────┐  cut
 *     │───────────────────────────│  bevel
 *     └───────────────────────────┘
 *      12  Strip between 3 and 4, seam A
 */
export function stripTemplate(strip: FoamStrip, projectName: string, foamName: string, say = inEnglish): Template {
  const { lengthMm, faceMm, backMm } = strip;
  const inset = (faceMm.max - backMm.max) / 2;
  const cut: Stroke = {
    role: 'cut',
    points: Float64Array.of(0, 0, lengthMm, 0, lengthMm, faceMm.max, 0, faceMm.max),
    closed: true,
  };
  const strokes = inset === 0 ? [cut] : [cut, ...longEdges(lengthMm, inset, faceMm.max - inset)];
  const foamBox = strokes.map(({ points }) => boxOfPoints(points)).reduce(joinBoxes);
  const block = blockOf(
    stripLines(strip, projectName, foamName).map((text, i) =>
      i === 0 ? { text: say(text), heightMm: NAME_MM, bold: true } : { text: say(text), heightMm: SMALLEST_WORDS_MM },
    ),
  );
  const middle = foamBox.minY - CLEARANCE_MM - block.heightMm / 2;
  const round: Box2 = {
    minX: 0,
    minY: middle - block.heightMm / 2,
    maxX: block.widthMm,
    maxY: middle + block.heightMm / 2,
  };
  return {
    piece: strip.id,
    drawing: { strokes, words: wordsInBox(block, boxAt(block, block.widthMm / 2, middle, 0)) },
    box: joinBoxes(foamBox, round),
    foamBox,
    onFoam: wordsOnFoam([cut.points], strokes, strip),
    reversed: false,
  };
}

const longEdges = (lengthMm: number, ...heights: readonly number[]): readonly Stroke[] =>
  heights.map((y) => ({ role: 'bevel', points: Float64Array.of(0, y, lengthMm, y), closed: false }));

/** What is said of a strip, most needed first. */
function stripLines(strip: FoamStrip, projectName: string, foamName: string): readonly string[] {
  const { number, name, quantity, thicknessMm, lengthMm, faceMm, backMm, bevelDeg } = strip;
  return [
    `${number}  ${name}`,
    `cut ${quantity} · ${foamText(thicknessMm, foamName)}`,
    bevelDeg === 0
      ? `${lengthMm} mm long, ${widthText(faceMm)} wide, edges square`
      : `${lengthMm} mm long, ${widthText(faceMm)} wide on the face, ${widthText(backMm)} on the back`,
    ...(bevelDeg === 0 ? [] : [`both long edges ${settingText(bevelDeg)}, traced on the face`]),
    ...(isOneWidth(faceMm) && isOneWidth(backMm) ? [] : ['drawn at its widest: narrow it where the fold is flatter']),
    'trim the ends in place',
    `${projectName} · strip revision ${strip.revision}`,
  ];
}
