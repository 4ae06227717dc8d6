import { rad, vec3, type Vec3 } from '../src/geom/vec.ts';
import { gridCells } from './kit/cells.ts';
import { bezier, sample } from './kit/curves.ts';
import { ModelBuilder, type SampleModel } from './kit/model-builder.ts';
import { evenly, ruledGrid } from './kit/surfaces.ts';

/** Steps of an arch from the ridge to the front (or back) edge. */
const ARCH_STEPS = 7;

/** One arch over the shoulder: three points of its half x >= 0, mm. */
interface Arch {
  /** On the ridge. */
  readonly ridge: Vec3;
  /** Where the tangents of both ends meet. */
  readonly turn: Vec3;
  /** On the front edge. */
  readonly edge: Vec3;
}

const halfArch = ({ ridge, turn, edge }: Arch): Vec3[] => sample(bezier(ridge, turn, edge), ARCH_STEPS);

/**
 * An arch of the dome, which turns about an axis from front to back as a lid does.
 * @param ridgeDeg, edgeDeg  turn from straight up towards the arm, degrees, on the ridge and at the front edge.
 */
function domeArch(ridgeDeg: number, edgeDeg: number): Arch {
  const onCircle = (x: number, radius: number, angleDeg: number, lift: number): Vec3 =>
    vec3(x, radius * Math.cos(rad(angleDeg)) + lift, radius * Math.sin(rad(angleDeg)));
  return {
    ridge: onCircle(0, 92, ridgeDeg, 0),
    turn: onCircle(50, 76, (ridgeDeg + edgeDeg) / 2, 0),
    edge: onCircle(84, 40, edgeDeg, -6),
  };
}

/** A lame: a bent strip between two arches. */
const lame = (top: Arch, bottom: Arch, rows: number) =>
  gridCells(ruledGrid(halfArch(top), halfArch(bottom), evenly(rows)));

/**
 * A shoulder plate: a ridged dome over two lames, the lower one turned out to a lip. The arm leaves towards +z, x runs from
 * back to front, and the plates overlap like roof tiles, 8.7 mm or more from face to face: room for foam of 6 mm.
 */
export function buildShoulderPlate(): SampleModel {
  const plate = new ModelBuilder('shoulder-plate');

  const turns = evenly(8).map((t) => ({ ridge: -42 + 112 * t, edge: -40 + 96 * t }));
  plate.twins('dome', gridCells(turns.map(({ ridge, edge }) => halfArch(domeArch(ridge, edge)))), ['front', 'back']);

  plate.across(
    'upper-lame',
    lame(
      { ridge: vec3(0, 42, 69), turn: vec3(47, 40, 54), edge: vec3(75, 14, 23) },
      { ridge: vec3(0, -22, 96), turn: vec3(56, -12, 84), edge: vec3(86, -24, 40) },
      4,
    ),
  );
  plate.across(
    'lower-lame',
    lame(
      { ridge: vec3(0, -4, 78), turn: vec3(51, 2, 65), edge: vec3(75, -12, 27) },
      { ridge: vec3(0, -66, 92), turn: vec3(58, -54, 80), edge: vec3(84, -62, 36) },
      4,
    ),
  );
  plate.across(
    'lip',
    lame(
      { ridge: vec3(0, -66, 92), turn: vec3(58, -54, 80), edge: vec3(84, -62, 36) },
      { ridge: vec3(0, -90, 114), turn: vec3(74, -76, 98), edge: vec3(104, -82, 44) },
      2,
    ),
  );
  return plate.build();
}
