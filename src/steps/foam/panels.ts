import { dot3, scale3, add3, unit3, vec3, type Vec3 } from '../../geom/vec.ts';
import { normalAt, type PieceSurface } from './piece-surface.ts';

/** The panels of a piece: its triangles parted along every fold sharper than a limit. */
export interface Panels {
  readonly count: number;
  /** Panel of each triangle. */
  readonly panelOf: Int32Array;
  /** For each panel the greatest lean of one of its facets from its mean direction, radians. */
  readonly leanRad: Float64Array;
}

/**
 * Parts a piece into panels. A crease that ends inside a panel does not part it.
 * @param limitRad folds sharper than this, either way, lie between panels.
 */
export function findPanels(surface: PieceSurface, limitRad: number): Panels {
  const count = surface.areas.length;
  const panelOf = new Int32Array(count).fill(-1);
  let panels = 0;
  const stack: number[] = [];
  for (let seed = 0; seed < count; seed += 1) {
    if (panelOf[seed] >= 0) continue;
    panelOf[seed] = panels;
    stack.push(seed);
    for (let t = stack.pop(); t !== undefined; t = stack.pop()) {
      for (let h = 3 * t; h < 3 * t + 3; h += 1) {
        const other = surface.across[h];
        if (other < 0 || panelOf[other] >= 0 || Math.abs(surface.foldRad[h]) > limitRad) continue;
        panelOf[other] = panels;
        stack.push(other);
      }
    }
    panels += 1;
  }
  return { count: panels, panelOf, leanRad: leans(surface, panelOf, panels) };
}

function leans(surface: PieceSurface, panelOf: Int32Array, count: number): Float64Array {
  const sums: Vec3[] = Array.from({ length: count }, () => vec3(0, 0, 0));
  for (let t = 0; t < panelOf.length; t += 1) {
    sums[panelOf[t]] = add3(sums[panelOf[t]], scale3(normalAt(surface, t), surface.areas[t]));
  }
  const means = sums.map(unit3);
  const lean = new Float64Array(count);
  for (let t = 0; t < panelOf.length; t += 1) {
    // An empty facet has no direction of its own.
    if (surface.areas[t] === 0) continue;
    const cosine = dot3(normalAt(surface, t), means[panelOf[t]]);
    lean[panelOf[t]] = Math.max(lean[panelOf[t]], Math.acos(Math.min(1, Math.max(-1, cosine))));
  }
  return lean;
}
