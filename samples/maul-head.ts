import { rad, vec3, type Vec3 } from '../src/geom/vec.ts';
import { flipped, gridCells, mirroredPoint, type Cell } from './kit/cells.ts';
import { ModelBuilder, type SampleModel } from './kit/model-builder.ts';

const SIDES = 8;
/** The facet that looks straight down, between the lower back and the lower front corner. */
const LOWEST = 6;
/** To the corners of the eight-sided hole, mm: 33 mm across its flats, for a core pipe of 32 mm or a thinner one with foam round it. */
const HOLE_RADIUS = 18;

/** A ring of eight corners round the x axis; flats above, below, in front and behind. */
interface Ring {
  /** Distance from the mirror plane, mm. */
  readonly x: number;
  /** To the corners, mm. */
  readonly radius: number;
}

const COLLAR: Ring = { x: 33, radius: 60 };
const NECK: Ring = { x: 47, radius: 45 };
const FACE_RIM: Ring = { x: 116, radius: 70 };
/** Half way up the bell, in line with its ends. */
const WAIST: Ring = { x: (NECK.x + FACE_RIM.x) / 2, radius: (NECK.radius + FACE_RIM.radius) / 2 };
const FACE: Ring = { x: 128, radius: 56 };

/** Corner `i` of a ring: counted from the lower front one, turning from the front over the top to the back. */
function corner({ x, radius }: Ring, i: number): Vec3 {
  const angle = rad((360 / SIDES) * (i - 0.5));
  return vec3(x, radius * Math.sin(angle), radius * Math.cos(angle));
}

const corners = (ring: Ring): Vec3[] => Array.from({ length: SIDES + 1 }, (_, i) => corner(ring, i % SIDES));

/** The eight facets between two rings, the second one farther out along +x. */
const facets = (inner: Ring, outer: Ring): Cell[] => gridCells([corners(inner), corners(outer)]);

/** The half x >= 0 of the lower facet of the collar, with half of the handle hole and an edge along its middle line. */
function lowerCollar(): Cell[] {
  const { x, y, z } = corner(COLLAR, SIDES - 1);
  const at = (px: number, pz: number): Vec3 => vec3(px, y, pz);
  const hole = [0, 45, 90].map((deg) => ({ x: HOLE_RADIUS * Math.cos(rad(deg)), z: HOLE_RADIUS * Math.sin(rad(deg)) }));
  const front: Cell[] = [
    [at(x, 0), at(x, z), at(hole[1].x, hole[1].z), at(hole[0].x, 0)],
    [at(x, z), at(0, z), at(0, hole[2].z), at(hole[1].x, hole[1].z)],
  ];
  const back = front.map((cell) => flipped(cell.map((p) => ({ ...p, z: -p.z }))));
  return [...front, ...back];
}

/** The facets between collar and neck; the lowest one has a corner in the middle of its edge, where the collar is cut. */
function shoulder(): Cell[] {
  const [upper, lower] = [corners(COLLAR), corners(NECK)];
  const middle = vec3(COLLAR.x, upper[SIDES - 1].y, 0);
  const plain = facets(COLLAR, NECK).filter((_, i) => i !== LOWEST);
  return [
    ...plain,
    [upper[LOWEST], lower[LOWEST], middle],
    [lower[LOWEST], lower[LOWEST + 1], middle],
    [lower[LOWEST + 1], upper[LOWEST + 1], middle],
  ];
}

/**
 * The head of a lamplighter's maul: eight-sided, two bells with chamfered striking faces and a raised collar with the hole for
 * the handle below. Closed but for that hole. Every ring is cut once, along its lower back corner; the collar through its hole.
 */
export function buildMaulHead(): SampleModel {
  const maul = new ModelBuilder('maul-head');
  const collarMiddle: Ring = { ...COLLAR, x: 0 };
  maul.across('collar', [...facets(collarMiddle, COLLAR).filter((_, i) => i !== LOWEST), ...lowerCollar()]);
  maul.twins('shoulder', shoulder());
  maul.twins('bell', [...facets(NECK, WAIST), ...facets(WAIST, FACE_RIM)]);
  maul.twins('chamfer', facets(FACE_RIM, FACE));
  maul.twins('face', [corners(FACE).slice(1).reverse()]);

  const cut = [COLLAR, NECK, WAIST, FACE_RIM, FACE].map((ring) => corner(ring, LOWEST));
  const throughHole = [vec3(COLLAR.x, corner(COLLAR, LOWEST).y, 0), vec3(HOLE_RADIUS, corner(COLLAR, LOWEST).y, 0)];
  for (const line of [cut, throughHole]) {
    maul.cutAlong(line);
    maul.cutAlong(line.map(mirroredPoint));
  }
  return maul.build();
}
