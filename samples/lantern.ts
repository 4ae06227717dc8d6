import { rad, vec3, type Vec3 } from '../src/geom/vec.ts';
import { gridCells, type Cell } from './kit/cells.ts';
import { between } from './kit/curves.ts';
import { ModelBuilder, type SampleModel } from './kit/model-builder.ts';

/** A level six-sided ring, corners in front and behind. */
interface Ring {
  /** Height, mm. */
  readonly y: number;
  /** To the corners, mm; also the length of a side. */
  readonly radius: number;
}

const FOOT: Ring = { y: 0, radius: 94 };
const SILL: Ring = { y: 34, radius: 72 };
const LINTEL: Ring = { y: 192, radius: 86 };
const EAVES: Ring = { y: 218, radius: 108 };
const ROOF_TOP: Ring = { y: 276, radius: 42 };
const VENT_TOP: Ring = { y: 302, radius: 42 };
const CAP_EDGE: Ring = { y: 318, radius: 57 };
/** The hole for the hook. */
const CAP_TOP: Ring = { y: 356, radius: 12 };

/**
 * Half a window opening, from the sill up: across the panel (0 middle, 1 edge) and up it (0 sill, 1 lintel).
 * A pointed arch, so that foam can be cut with few turns of the knife.
 */
const WINDOW: readonly (readonly [number, number])[] = [
  [0.68, 0.1],
  [0.68, 0.66],
  [0.6, 0.76],
  [0.4, 0.84],
  [0, 0.92],
];

/** Corner `i` of a ring: 0 in front, then round the wearer's left to 3 behind. */
const corner = ({ y, radius }: Ring, i: number): Vec3 =>
  vec3(radius * Math.sin(rad(60 * i)), y, radius * Math.cos(rad(60 * i)));

const halfRing = (ring: Ring): Vec3[] => [0, 1, 2, 3].map((i) => corner(ring, i));

/** The three panels of the half x >= 0 between two rings. */
const panels = (upper: Ring, lower: Ring): Cell[] => gridCells([halfRing(upper), halfRing(lower)]);

/** One wall of the body with its window, between corners `i` and `i + 1`. */
function windowWall(i: number): Cell[] {
  const [topLeft, topRight] = [corner(LINTEL, i), corner(LINTEL, i + 1)];
  const [footLeft, footRight] = [corner(SILL, i), corner(SILL, i + 1)];
  const at = (across: number, up: number): Vec3 =>
    between(between(footLeft, topLeft, up), between(footRight, topRight, up), (1 + across) / 2);
  const left = WINDOW.map(([across, up]) => at(-across, up));
  const right = WINDOW.map(([across, up]) => at(across, up));
  const apex = left[left.length - 1];
  const cells: Cell[] = [
    [footLeft, footRight, right[0], left[0]],
    [footLeft, left[0], left[1], topLeft],
    [footRight, topRight, right[1], right[0]],
    [topLeft, apex, topRight],
  ];
  for (let k = 2; k < WINDOW.length; k++) {
    cells.push([topLeft, left[k - 1], left[k]], [topRight, right[k], right[k - 1]]);
  }
  return cells;
}

/**
 * A six-sided lantern with a window in each wall, an overhanging roof and a vented cap; open below, for a lamp.
 * Every ring is cut once, along its back corner; the body parts there and in front, into two halves of three windows.
 */
export function buildLantern(): SampleModel {
  const lantern = new ModelBuilder('lantern');
  lantern.across('base', panels(SILL, FOOT));
  lantern.twins('body', [0, 1, 2].flatMap(windowWall));
  lantern.across('eaves', panels(EAVES, LINTEL));
  lantern.across('roof', panels(ROOF_TOP, EAVES));
  lantern.across('vent', panels(VENT_TOP, ROOF_TOP));
  lantern.across('cap-eaves', panels(CAP_EDGE, VENT_TOP));
  lantern.across('cap', panels(CAP_TOP, CAP_EDGE));

  lantern.cutAlong([FOOT, SILL].map((ring) => corner(ring, 3)));
  lantern.cutAlong([LINTEL, EAVES, ROOF_TOP, VENT_TOP, CAP_EDGE, CAP_TOP].map((ring) => corner(ring, 3)));
  return lantern.build();
}
