import type { Shape } from '../../../src/model/shape.ts';
import { meshOfShape } from '../../../src/steps/shapes/shape-mesh.ts';
import { layFlat } from './flat-figures.ts';

/** A shape as a mesh laid flat as a sculpt is, against what its sizes give; errors as shares. */
export interface LaidShape {
  readonly pieces: number;
  readonly triangles: number;
  readonly areaError: number;
  readonly seamError: number;
  readonly worstStretchPct: number;
}

/** Seams of a shape as they run on the finished surface, mm: each edge that is glued, half of it for either side. */
export function seamLength({ pieces }: Pick<Shape, 'pieces'>): number {
  return pieces.reduce((sum, { outline, holes, quantity }) => {
    const glued = [outline, ...holes].flat().filter(({ seam, meets }) => seam !== undefined || meets !== undefined);
    return sum + (quantity * glued.reduce((own, { trueLengthMm }) => own + trueLengthMm, 0)) / 2;
  }, 0);
}

/** Lays the mesh of a shape flat, cut along its seams, its surface being the middle of the foam. */
export async function layShapeFlat(shape: Shape, facets: number): Promise<LaidShape> {
  const mesh = meshOfShape(shape, facets);
  if (mesh === null) throw new Error(`${shape.name} has no surface`);
  const report = await layFlat(
    { corners: mesh.corners.map(({ x, y, z }) => [x, y, z] as const), faces: mesh.faces, seams: mesh.seams },
    { thicknessMm: 1 },
  );
  const covered = new Set(shape.patches.map(({ piece }) => piece));
  const exact = shape.pieces.filter(({ name }) => covered.size === 0 || covered.has(name));
  const area = exact.reduce((sum, { areaMm2, quantity }) => sum + areaMm2 * quantity, 0);
  // What is formed has no one flat shape: its finished surface and its seams there are held against the sizes.
  const isFormed = exact.some(({ bend }) => bend.kind === 'formed');
  const laid = report.pieces.reduce((sum, one) => sum + (isFormed ? one.surfaceAreaMm2 : one.flatAreaMm2), 0);
  const seams = seamLength({ pieces: exact });
  const glued = report.seams.filter(({ pieces }) => pieces.length === 2);
  const sewn = glued.reduce(
    (sum, { lengthMm, trueLengthMm }) =>
      sum + (isFormed ? trueLengthMm : lengthMm.reduce((a, b) => a + b, 0) / lengthMm.length),
    0,
  );
  return {
    pieces: report.pieces.length,
    triangles: report.model.triangles,
    areaError: laid / area - 1,
    seamError: seams === 0 ? 0 : sewn / seams - 1,
    worstStretchPct: Math.max(...report.pieces.map(({ stretchPct }) => Math.abs(stretchPct.max))),
  };
}
