import type { Stepwise } from '../../base/stepwise.ts';
import { cross3, dot3, length3, pointAt3, scale3, add3, sub3, type Vec3 } from '../../geom/vec.ts';
import type { SourceModel } from '../../model/source-model.ts';
import { findRims, type Rim } from './rims.ts';
import type { SideLinks } from './side-links.ts';

/** An open shell whose faces agree. */
export interface OpenShell {
  readonly seed: number;
  readonly faces: readonly number[];
  /** Unit² of the file. */
  readonly area: number;
  /** Signed, between its faces and the middle that is given with it, unit³. */
  readonly volume: number;
}

/**
 * Lids over its rims are smaller than this share of the shell, or what is inside of it is a matter of taste: a hemisphere's is 1/2, that of a
 * tube as long as it is wide 1/2, of a helm or a horn a quarter or less.
 */
const MOST_LID_SHARE = 0.4;

/** Share of a ball's volume of the same area that a shell encloses at least: a crumpled sheet encloses next to nothing. */
const LEAST_ROUNDNESS = 0.02;

/**
 * Which open shells look inward: with a flat lid over every rim they would be closed, the lids are small, and the volume is negative. Shells
 * whose rims do not close, or that touch another at a rim, are left as they are.
 * @param middle  that volumes are measured from.
 * @returns their seeds, in order.
 */
export function* inwardSteps(
  model: SourceModel,
  links: SideLinks,
  shells: readonly OpenShell[],
  middle: Vec3,
): Stepwise<number[]> {
  if (shells.length === 0) return [];
  const shellOf = new Int32Array(model.positions.length / 3).fill(-1);
  for (const [s, { faces }] of shells.entries()) {
    for (const f of faces)
      for (let i = model.faceStarts[f]; i < model.faceStarts[f + 1]; i += 1) shellOf[model.faceVertices[i]] = s;
  }
  yield;
  const lids = shells.map(() => ({ area: 0, volume: 0, isSure: true }));
  const rims = findRims(model, links);
  yield;
  for (const rim of rims) {
    const s = shellOf[rim.vertices[0]];
    if (s < 0) continue;
    const lid = lidOf(model, rim, middle);
    lids[s].area += lid.area;
    lids[s].volume += lid.volume;
    lids[s].isSure &&= rim.isClosed && rim.vertices.every((v) => shellOf[v] === s);
  }
  return shells.flatMap(({ seed, area, volume }, s) => {
    const lid = lids[s];
    const isClear = lid.isSure && lid.area < MOST_LID_SHARE * area;
    const whole = volume + lid.volume;
    return isClear && whole < 0 && roundness(whole, area + lid.area) > LEAST_ROUNDNESS ? [seed] : [];
  });
}

/** 36 pi V² / A³: 1 for a ball, less for anything else (the isoperimetric inequality). */
const roundness = (volume: number, area: number): number => (36 * Math.PI * volume * volume) / area ** 3;

/** A fan from the rim's middle that closes the shell: it runs along the rim the other way round than the faces. */
function lidOf({ positions }: SourceModel, { vertices }: Rim, middle: Vec3): { area: number; volume: number } {
  const points = vertices.map((v) => sub3(pointAt3(positions, v), middle));
  const apex = points.reduce((sum, p) => add3(sum, scale3(p, 1 / points.length)), { x: 0, y: 0, z: 0 } as Vec3);
  let [area, volume] = [0, 0];
  for (const [i, p] of points.entries()) {
    const q = points[(i + 1) % points.length];
    area += length3(cross3(sub3(p, apex), sub3(q, apex))) / 2;
    volume += dot3(apex, cross3(q, p)) / 6;
  }
  return { area, volume };
}
