import type { Work } from '../base/work.ts';
import type { SurfaceLook } from './bench-contract.ts';
import type { CornerSurface } from './corner-surface.ts';
import type { SolidDisplay } from './display.ts';
import { inScene } from './foam-build.ts';
import { buildForm } from './sculpt-form.ts';

/** The sculpt, or one surface of its foam, as a surface to draw. */
export async function buildSurface(solid: SolidDisplay, look: SurfaceLook, work: Work): Promise<CornerSurface> {
  const { sculpt, groups } = solid.base;
  return await buildForm(inScene(surfacePoints(solid, look), solid.sceneFromModel), sculpt.triangles, groups, work);
}

/** Every corner moves along one line from back to face, so that the neutral surface divides each of these lines alike. */
function surfacePoints({ base, shell }: SolidDisplay, look: SurfaceLook): Float32Array {
  if (shell === null || look === 'sculpt') return base.sculpt.positions;
  const { facePositions: face, backPositions: back, neutralFraction: k } = shell;
  if (look === 'face') return face;
  return look === 'back' ? back : back.map((x, i) => x + k * (face[i] - x));
}
