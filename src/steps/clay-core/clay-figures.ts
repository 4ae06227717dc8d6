import type { Finding } from '../../base/finding.ts';
import { CLAY_SOURCES, clayLayers, wetVolume, type Clay } from '../../model/clay.ts';
import type { AreaSolid, ClayCore, ClayCoreWish, ClayOfCore } from '../../model/clay-core.ts';
import type { Stack } from '../../model/stack.ts';
import { volumeOf } from './area-solid.ts';
import { deepestClay, leastClay } from './clay-depth.ts';

/** So many coats or more are a long wait, told [J]. */
const MANY_COATS = 4;

/**
 * What an area in clay over a core comes to.
 * @param faces     polygons of the file that the area is.
 * @param stack     the core: made of `area.solid` along its axis under a cover of `area.skin`; null where no sheet fits and all is clay.
 * @param wallMm    thickness of the wall that stays round the area, mm; 0 where none is known.
 */
export function clayFigures(
  area: AreaSolid,
  stack: Stack | null,
  { coverMm, label }: Pick<ClayCoreWish, 'coverMm' | 'label'>,
  clay: Clay,
  faces: readonly number[],
  wallMm: number,
): ClayCore {
  const { solid, areaMm2, borders, axis } = area;
  const solidMm3 = volumeOf(solid.positions, solid.triangles);
  const coreMm3 = stack?.stackedMm3 ?? 0;
  const bare = { frame: BARE_FRAME, layers: [] };
  const { depthMm, boundMm: depthBoundMm } = deepestClay(area, stack ?? bare);
  const clayMm3 = solidMm3 - coreMm3;
  const meanMm = clayMm3 / areaMm2;
  const ofClay = clayOfCore(clayMm3, meanMm, depthMm + depthBoundMm, clay, label);
  const rims = borders.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  return {
    faces,
    axis,
    coverMm,
    closedBy: borders.length === 0 ? 'itself' : 'rims',
    solidMm3,
    coreMm3,
    clayMm3,
    boundMm3: stack?.layers.reduce((sum, layer) => sum + layer.areaBoundMm2 * layer.thicknessMm, 0) ?? 0,
    areaMm2,
    layers: stack?.layers.length ?? 0,
    depthMm,
    depthBoundMm,
    meanMm,
    leastMm: Math.min(leastClay(area, stack ?? bare), depthMm),
    clay: ofClay,
    borders,
    glueMm2: 2 * rims * wallMm,
    findings: [...area.findings, ...(stack?.findings ?? []), ...coatFinding(ofClay, depthMm, clay)],
  };
}

const BARE_FRAME = { x: { x: 1, y: 0, z: 0 }, y: { x: 0, y: 1, z: 0 }, z: { x: 0, y: 0, z: 1 } };

function clayOfCore(
  clayMm3: number,
  meanMm: number,
  depthMm: number,
  clay: Clay,
  label: ClayCoreWish['label'],
): ClayOfCore {
  const wetMl = wetVolume(clayMm3, clay.shrinkPct) / 1000;
  const coats = [clayLayers(meanMm, clay.layerMm), clayLayers(depthMm, clay.layerMm)] as const;
  const massG = label?.gPerCm3 === undefined ? null : wetMl * label.gPerCm3;
  const byMass = massG === null || label?.packG === undefined ? null : massG / label.packG;
  const packs = label?.packMl === undefined ? byMass : wetMl / label.packMl;
  return {
    id: clay.id,
    name: clay.name,
    wetMl,
    massG,
    packs: packs === null ? null : Math.ceil(packs - 1e-9),
    coats,
    dryH: [coats[0] * clay.dryH, coats[1] * clay.dryH],
    cautions: clay.cautions,
    sources: CLAY_SOURCES,
  };
}

function coatFinding({ coats, dryH }: ClayOfCore, depthMm: number, clay: Clay): readonly Finding[] {
  if (coats[1] < MANY_COATS) return [];
  return [
    {
      code: 'clay/many-coats',
      severity: 'note',
      text: `The clay is up to ${depthMm.toFixed(1)} mm deep: ${coats[1]} coats of ${clay.layerMm} mm, each dried before the next, take ${dryH[1]} h. Thinner sheets in the core save clay and time.`,
      value: coats[1],
      limit: MANY_COATS,
      where: {},
    },
  ];
}
