import { LINE_STYLES } from '../model/line-style.ts';
import type { Drawing, LineRole, Stroke } from '../model/template.ts';

/** All strokes of one role as one path, ready for an SVG whose unit is mm and whose y runs up. */
export interface DrawnLines {
  readonly role: LineRole;
  /** Path data, mm. */
  readonly path: string;
  readonly widthMm: number;
  readonly dashMm: readonly number[];
  /** 0 black to 1 white. */
  readonly grey: number;
  readonly isFilled: boolean;
}

/** Strokes gathered by role, in the order the roles first appear: one element per role keeps a page of a thousand strokes quick. */
export function drawnLines(drawing: Drawing): DrawnLines[] {
  const groups = new Map<string, Stroke[]>();
  for (const stroke of drawing.strokes) {
    const key = `${stroke.role}${stroke.filled === true ? ' filled' : ''}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [stroke]);
    else group.push(stroke);
  }
  return [...groups.values()].map((strokes) => {
    const [{ role, filled }] = strokes;
    const { widthMm, dashMm, grey } = LINE_STYLES[role];
    return { role, path: strokes.map(pathOf).join(''), widthMm, dashMm, grey, isFilled: filled === true };
  });
}

function pathOf({ points, closed }: Stroke): string {
  const parts: string[] = [];
  for (let i = 0; i + 1 < points.length; i += 2)
    parts.push(`${i === 0 ? 'M' : 'L'}${short(points[i])} ${short(points[i + 1])}`);
  return parts.join('') + (closed ? 'Z' : '');
}

/** To a hundredth of a millimetre: finer than a screen shows. */
const short = (mm: number): string => String(Math.round(mm * 100) / 100);
