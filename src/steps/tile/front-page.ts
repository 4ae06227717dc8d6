import type { Say } from '../../base/paper-language.ts';
import type { Page } from '../../model/page.ts';
import { moveDrawing } from './block.ts';
import type { FilledPage } from './flow.ts';
import { drawFoot } from './page-foot.ts';
import { FOOT_MM, type PaperFrame } from './paper-frame.ts';
import { Pen } from './pen.ts';

/** A page that stands by itself, with its foot; on a roll cut off where it ends. */
export function frontPage(
  kind: Exclude<Page['kind'], 'tile'>,
  name: string,
  { pen, lowestMm }: FilledPage,
  frame: PaperFrame,
  foot: { readonly title: string; readonly pageNumber: number; readonly pageCount: number; readonly say: Say },
): Page {
  const unused = frame.roll ? lowestMm - frame.marginMm - FOOT_MM : 0;
  const { strokes, words } = moveDrawing(pen.drawing(), { x: 0, y: -unused, turnRad: 0 });
  const under = new Pen();
  drawFoot(under, frame, { ...foot, pageName: name, below: '', ruledHeightMm: null });
  const heightMm = frame.roll ? frame.tileHeightMm + 2 * frame.marginMm + FOOT_MM - unused : frame.heightMm;
  return {
    kind,
    name,
    widthMm: frame.widthMm,
    heightMm,
    drawing: { strokes: [...strokes, ...under.strokes], words: [...words, ...under.words] },
    pieces: [],
  };
}
