import type { Vec2 } from '../../geom/vec.ts';
import type { Drawing, LineRole, Stroke, Words } from '../../model/template.ts';

/** How a line of words is set; what is left out is small, plain, level and to the right of its point. */
export interface Setting {
  readonly heightMm?: number;
  readonly align?: Words['align'];
  readonly angleRad?: number;
  readonly bold?: boolean;
}

/** Capital heights of all words a page adds to its templates, mm: one scale, nothing under the smallest. */
export const TYPE_MM = { body: 2.5, heading: 3.2, title: 5, name: 5.5 } as const;

/** From one baseline to the next, as a share of the capital height. */
export const LEADING = 1.85;

/** Gathers what is drawn on one page, mm, origin lower left. */
export class Pen {
  readonly strokes: Stroke[] = [];
  readonly words: Words[] = [];

  /** A line through points given as x, y, x, y … */
  line(role: LineRole, ...xy: readonly number[]): void {
    this.strokes.push({ role, points: Float64Array.from(xy), closed: false });
  }

  rectangle(role: LineRole, left: number, bottom: number, width: number, height: number): void {
    const right = left + width;
    const top = bottom + height;
    this.strokes.push({
      role,
      points: Float64Array.of(left, bottom, right, bottom, right, top, left, top),
      closed: true,
    });
  }

  write(text: string, at: Vec2, setting: Setting = {}): void {
    if (text === '') return;
    const { heightMm = TYPE_MM.body, align = 'left', angleRad = 0, bold = false } = setting;
    this.words.push({ text, at, angleRad, heightMm, align, ...(bold ? { bold } : {}) });
  }

  drawing(): Drawing {
    return { strokes: this.strokes, words: this.words };
  }
}
