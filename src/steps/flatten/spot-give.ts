import type { FlatPiece } from '../../model/flat-piece.ts';
import type { RestShapes } from './rest-shapes.ts';

/** What the foam must give at each vertex: means by area of the triangles round it. */
export interface Give {
  readonly kind: 'stretch' | 'squash';
  /** Per triangle, per cent; negative where the foam must do the opposite. */
  readonly figure: Float64Array;
  /** A third of the area of the triangles at each vertex, mm². */
  readonly area: Float64Array;
  /** Per cent in the direction of the most, and square to it. */
  readonly percent: Float64Array;
  readonly across: Float64Array;
  /** Direction of the most as its doubled angle, as long as what it gives more than square to it, per cent. */
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

export function giveAtVertices(
  { corners, area, empty, count, vertexCount }: RestShapes,
  { major, minor, majorAngle }: Pick<FlatPiece, 'major' | 'minor' | 'majorAngle'>,
  kind: 'stretch' | 'squash',
): Give {
  const figure = new Float64Array(count);
  const own = new Float64Array(vertexCount);
  const percent = new Float64Array(vertexCount);
  const across = new Float64Array(vertexCount);
  const cos = new Float64Array(vertexCount);
  const sin = new Float64Array(vertexCount);
  // Squash is greatest square to the greatest stretch: the doubled angle turns by half a turn.
  const sign = kind === 'stretch' ? 1 : -1;
  for (let t = 0; t < count; t += 1) {
    const most = 100 * (kind === 'stretch' ? major[t] - 1 : 1 - minor[t]);
    const least = 100 * (kind === 'stretch' ? minor[t] - 1 : 1 - major[t]);
    figure[t] = most;
    if (empty[t] === 1) continue;
    const third = area[t] / 3;
    const lean = sign * (most - least) * third;
    const c = lean * Math.cos(2 * majorAngle[t]);
    const s = lean * Math.sin(2 * majorAngle[t]);
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      const v = corners[h];
      own[v] += third;
      percent[v] += third * most;
      across[v] += third * least;
      cos[v] += c;
      sin[v] += s;
    }
  }
  for (let v = 0; v < vertexCount; v += 1) {
    if (!(own[v] > 0)) continue;
    percent[v] /= own[v];
    across[v] /= own[v];
    cos[v] /= own[v];
    sin[v] /= own[v];
  }
  return { kind, figure, area: own, percent, across, cos, sin };
}
