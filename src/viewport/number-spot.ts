import { widestSpot, type WidestSpot } from '../geom/widest-spot.ts';
import type { Template } from '../model/template.ts';

/** A number may stand so far from the very widest spot, mm. */
const PRECISION_MM = 1;

const KNOWN = new WeakMap<Template, WidestSpot>();

/** Where a template is widest: its number stands there on a picture. Worked out once for each. */
export function numberSpot(template: Template): WidestSpot {
  const known = KNOWN.get(template);
  if (known !== undefined) return known;
  const rings = template.drawing.strokes
    .filter(({ role, closed }) => role === 'cut' && closed)
    .map(({ points }) => points);
  const { minX, minY, maxX, maxY } = template.foamBox;
  const spot =
    rings.length > 0
      ? widestSpot(rings, PRECISION_MM)
      : { x: (minX + maxX) / 2, y: (minY + maxY) / 2, radiusMm: Math.min(maxX - minX, maxY - minY) / 2 };
  KNOWN.set(template, spot);
  return spot;
}
