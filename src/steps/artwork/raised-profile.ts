import type { RaisedEdge, RaisedRule } from '../../model/artwork-craft.ts';

/** How far a smooth edge stands inside the drawn outline by its height, in closed form, mm. */
export interface RaisedProfile {
  /** @param z  height over the ground, mm, 0 to the height of the whole. */
  at(z: number): number;
  /** What stands outside of it between the outline's own upright and a height, mm². */
  areaBelow(z: number): number;
}

/** @param heightMm  of all layers together, mm, > 0. */
export function raisedProfile(edge: RaisedEdge, heightMm: number): RaisedProfile {
  switch (edge.kind) {
    case 'square':
      return { at: () => 0, areaBelow: () => 0 };
    case 'bevel': {
      const slope = Math.tan((edge.leanDeg * Math.PI) / 180);
      return { at: (z) => slope * z, areaBelow: (z) => (slope * z * z) / 2 };
    }
    case 'rounded': {
      // x = w (1 - sqrt(1 - u²)) with u = z / h: upright at the ground, level at the top.
      const { widthMm: w } = edge;
      const share = (z: number): number => Math.min(1, Math.max(0, z / heightMm));
      return {
        at: (z) => w * (1 - Math.sqrt(1 - share(z) ** 2)),
        areaBelow: (z) => {
          const u = share(z);
          return w * heightMm * (u - (u * Math.sqrt(1 - u * u) + Math.asin(u)) / 2);
        },
      };
    }
  }
}

/** One layer of a stack against the smooth edge. */
export interface RaisedStep {
  /** Its own edge inside the drawn outline, mm. */
  readonly setbackMm: number;
  /** Of what is sanded off, and of what is filled, across the edge, mm². */
  readonly sandMm2: number;
  readonly fillMm2: number;
  /** Of the smooth edge at the layer's upper face, mm. */
  readonly topSetbackMm: number;
}

export function raisedSteps(
  profile: RaisedProfile,
  layers: number,
  thicknessMm: number,
  rule: RaisedRule,
): readonly RaisedStep[] {
  return Array.from({ length: layers }, (_, i) => {
    const [bottom, top] = [i * thicknessMm, (i + 1) * thicknessMm];
    const meets = rule === 'edge' ? bottom : (bottom + top) / 2;
    const setbackMm = profile.at(meets);
    const between = (from: number, to: number): number => profile.areaBelow(to) - profile.areaBelow(from);
    return {
      setbackMm,
      sandMm2: Math.max(0, between(meets, top) - (top - meets) * setbackMm),
      fillMm2: Math.max(0, (meets - bottom) * setbackMm - between(bottom, meets)),
      topSetbackMm: profile.at(top),
    };
  });
}
