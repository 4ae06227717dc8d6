import type { Finding } from '../../base/finding.ts';
import { formatMm } from '../../base/format-length.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { buildTree } from '../../geom/bvh.ts';
import { vec3, type Vec3 } from '../../geom/vec.ts';
import { pointAtPlace } from '../../mesh/lines/mesh-point.ts';
import type { MeshPoint } from '../../mesh/lines/mesh-line.ts';
import { surfaceOf } from '../../mesh/surface.ts';
import type { PlainStep } from '../../model/plain-piece.ts';
import type { EngravingPlace } from '../../project/engraving-part.ts';
import type { EngravingPart } from '../../project/plain-part.ts';
import { facePolygons, meshPointOf } from '../../steps/seams/surface-points.ts';
import { pointOnFiner } from '../trim-lines.ts';
import { groundOf, type TrimSculpt } from '../trim-sculpt.ts';
import { wrapArtwork } from '../wrap-artwork.ts';
import { artworkOf } from './artwork-part.ts';
import type { PlainGround } from './plain-ground.ts';
import type { PlainMade } from './plain-outcome.ts';
import { noSculpt } from './trim-part.ts';

/** How deep its lines are cut, of the thickness (common practice): the blade leaves enough that the piece bends there as beside it. */
export const ENGRAVED_SHARE = 1 / 3;

/** Less line than this is not missed, mm. */
const BARE_MM = 0.1;

/**
 * Artwork on the face of a sculpt, in lines for its flat pieces; no foam is cut for it.
 * @returns fails with `engraving/no-point` or `wrap-art/…` where it has no place, and as its file does.
 */
export function engravingPartWork(part: EngravingPart, ground: PlainGround): Result<PlainMade> {
  const { on } = ground;
  if (on === null) return noSculpt();
  const artwork = artworkOf(part.source, part.drawing, ground);
  if (!artwork.ok) return artwork;
  const at = placeOn(on, part.at);
  if (!at.ok) return at;
  const face = groundOf(on, 0).foot;
  const wrapped = wrapArtwork(face, on.grounds, artwork.value, {
    at: at.value,
    along: part.up === undefined ? UP[on.up] : vec3(...part.up),
    // The direction is where the drawing's y points to.
    turnRad: -Math.PI / 2,
    trueOn: part.trueOn,
  });
  if (!wrapped.ok) return wrapped;
  const { art, bareMm } = wrapped.value;
  return ok(
    {
      pieces: [],
      steps: [stepOf(part.name, on.shell.thicknessMm)],
      findings: [...artwork.notes.filter(isOfLines), ...art.findings, ...bare(bareMm)],
      form: null,
      engraved: { on: part.on, art },
    },
    wrapped.notes,
  );
}

/** An open line is meant so, and lines may cross: no knife goes through. */
const isOfLines = ({ code, severity }: Finding): boolean =>
  code !== 'artwork/crossing' && !(code === 'artwork/open' && severity === 'note');

const UP: Readonly<Record<TrimSculpt['up'], Vec3>> = { x: vec3(1, 0, 0), y: vec3(0, 1, 0), z: vec3(0, 0, 1) };

function placeOn(on: TrimSculpt, place: EngravingPlace): Result<MeshPoint> {
  if (place.by === 'point') {
    const { mesh, model } = on.sculpt;
    const point = meshPointOf(mesh, facePolygons(model), place.point);
    if (point !== null) return ok(pointOnFiner(on, point));
    return fail(
      'engraving/no-point',
      'It sits at a corner or face that the sculpt does not have: choose another place on the sculpt.',
    );
  }
  const surface = surfaceOf(on.mesh);
  const hit = buildTree(surface.positions, surface.triangles).nearest(vec3(...place.mm));
  if (hit === null) throw new Error('engraving: a sculpt without a triangle');
  return ok(pointAtPlace(surface, hit.triangle, hit.point));
}

/** Opened by heat the cut becomes a groove with round lips (common practice). */
const stepOf = (name: string, thicknessMm: number): PlainStep => ({
  work: 'engrave',
  pieces: [],
  text: `Engrave ${name} while its pieces lie flat, on the face: cut the lines ${formatMm(ENGRAVED_SHARE * thicknessMm)} deep, a third of the thickness, with a fresh blade, and open them with the hot-air gun; or trace and paint them.`,
  glueMm2: 0,
  cautions: ['knife', 'heat', 'pvc'],
});

const bare = (mm: number): readonly Finding[] =>
  mm < BARE_MM
    ? []
    : [
        {
          code: 'engraving/no-piece',
          severity: 'warning',
          text: `${formatMm(mm)} of its lines lie where no flat piece is cut for the sculpt, and are left out: move the artwork, or make it smaller.`,
          value: mm,
          unit: 'mm',
          where: {},
        },
      ];
