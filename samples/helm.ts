import { add3, length3, scale3, sub3, vec3, type Vec3 } from '../src/geom/vec.ts';
import { gridCells, threeSidedCells, type Cell } from './kit/cells.ts';
import { backwards, between, bezier, sample, through, type Curve } from './kit/curves.ts';
import { ModelBuilder, type SampleModel } from './kit/model-builder.ts';
import { coonsGrid, evenly, ruledGrid } from './kit/surfaces.ts';

/** Steps along each side of a crown panel; even, because a three-sided panel is cut in halves. */
const CROWN_STEPS = 8;
/** Steps of the brow's lower edge that belong to the cheek; the rest are free above the face. */
const CHEEK_STEPS = 4;
/** Steps of the cheek's slanting edge beside the eye. */
const EYE_STEPS = 5;
const BROW_ROWS = 2;
const CHEEK_ROWS = 4;
const GUARD_ROWS = 2;

// Corner points of the wearer's left half. y = 0 is the plane where a head is measured round.
const BROW_MIDDLE = vec3(0, 48, 118); // where the keel runs out on the forehead
const KEEL_FRONT = vec3(9, 45, 114);
const CROWN_TOP = vec3(17, 123, -16); // foot of the keel above the ears
const KEEL_BACK = vec3(9, 21, -127);
const BACK_MIDDLE = vec3(0, 21, -129);
const TEMPLE = vec3(105, 31, -16);
const NECK_CORNER = vec3(97, -82, -36);
const EAR = vec3(104, -10, -22);
const PEAK = vec3(0, 4, 156);
const BROW_CORNER = vec3(88, -2, 70); // where the face opening begins under the brow
const CHEEK_POINT = vec3(38, -66, 119); // foremost point of the cheek, beside the mouth
const JAW = vec3(35, -141, 107);
const BAND_MIDDLE = vec3(0, -16, -131);
const NECK_MIDDLE = vec3(0, -56, -116);
const GUARD_CORNER = vec3(108, -116, -50);
const GUARD_MIDDLE = vec3(0, -114, -174);

// Design curves, all smooth, meeting in the corners above.
const browFront: Curve = bezier(KEEL_FRONT, vec3(66, 40, 99), vec3(98, 33, 46), TEMPLE);
const crownRear: Curve = bezier(TEMPLE, vec3(98, 30, -78), vec3(60, 20, -114), KEEL_BACK);
const earSeam: Curve = bezier(TEMPLE, vec3(92, 88, -18), CROWN_TOP);
const keelFootFront: Curve = bezier(KEEL_FRONT, vec3(34, 84, 106), vec3(19, 122, 52), CROWN_TOP);
const keelFootRear: Curve = bezier(CROWN_TOP, vec3(13, 124, -80), vec3(14, 76, -124), KEEL_BACK);
const browLowerFree: Curve = bezier(PEAK, vec3(32, 13, 138), vec3(72, 8, 104), BROW_CORNER);
const browLowerCheek: Curve = bezier(BROW_CORNER, vec3(97, -8, 44), vec3(101, -11, 10), EAR);
const eyeEdge: Curve = bezier(CHEEK_POINT, vec3(66, -52, 108), vec3(80, -38, 88), BROW_CORNER);
const mouthEdge: Curve = bezier(CHEEK_POINT, vec3(33, -104, 118), JAW);
const jawLine: Curve = bezier(JAW, vec3(76, -136, 92), vec3(97, -96, 30), NECK_CORNER);
const bandLower: Curve = bezier(EAR, vec3(98, -10, -82), vec3(60, -16, -118), BAND_MIDDLE);
const skirtLower: Curve = bezier(NECK_CORNER, vec3(91, -76, -84), vec3(48, -56, -106), NECK_MIDDLE);
const guardLower: Curve = bezier(GUARD_CORNER, vec3(108, -120, -112), vec3(52, -112, -156), GUARD_MIDDLE);

/** Height of the keel above its foot, mm, from the forehead (0) over the top (0.5) to the back (1). */
const keelHeight = through([0, 0], [0.12, 9], [0.3, 15], [0.5, 15.5], [0.75, 12.5], [0.92, 6.5], [1, 0]);

/**
 * Between two curves that rise to one point: straight across, with the bulge of `base` (from `left`'s foot to `right`'s)
 * fading upwards. The less bulge, the nearer to a surface that foam can follow by bending alone.
 */
function crownPanel(left: Curve, right: Curve, base: Curve): Cell[] {
  const n = CROWN_STEPS;
  return threeSidedCells(n, (l, r, top) => {
    if (top === 0) return base(r / n);
    if (r === 0) return left(top / n);
    if (l === 0) return right(top / n);
    const u = r / (l + r);
    const v = top / n;
    const bulge = sub3(base(u), between(base(0), base(1), u));
    return add3(between(left(v), right(v), u), scale3(bulge, 1 - v));
  });
}

/** The keel's edge over its foot: on the mirror plane, lifted away from the inside of the curve. */
function keelEdge(foot: readonly Vec3[]): Vec3[] {
  return foot.map((p, i) => {
    const [a, b] = [foot[Math.max(0, i - 1)], foot[Math.min(foot.length - 1, i + 1)]];
    const along = vec3(0, b.y - a.y, b.z - a.z);
    const up = scale3(vec3(0, -along.z, along.y), keelHeight(i / (foot.length - 1)) / length3(along));
    if (i === 0) return BROW_MIDDLE;
    if (i === foot.length - 1) return BACK_MIDDLE;
    return add3(vec3(0, p.y, p.z), up);
  });
}

/**
 * The lamplighter's helm, for a head of 580 mm girth (about 160 x 208 mm): 104 mm to each side and 124 mm to the back leave
 * room for 6 to 8 mm of foam and about 10 mm of padding.
 * A crown of four panels rises to a flame-shaped keel; below it a peaked brow, cheek guards and a skirt with a flared neck guard.
 */
export function buildHelm(): SampleModel {
  const helm = new ModelBuilder('helm');

  helm.twins('crown-front', crownPanel(keelFootFront, earSeam, browFront));
  helm.twins('crown-rear', crownPanel(earSeam, backwards(keelFootRear), crownRear));

  const keelFoot = [...sample(keelFootFront, CROWN_STEPS), ...sample(keelFootRear, CROWN_STEPS).slice(1)];
  const edge = keelEdge(keelFoot);
  // Seen from the wearer's left the front is on the left, the edge above.
  helm.twins('keel', gridCells([edge, keelFoot]));

  const browUpper = [BROW_MIDDLE, ...sample(browFront, CROWN_STEPS)];
  const browLower = [
    ...sample(browLowerFree, CROWN_STEPS + 1 - CHEEK_STEPS),
    ...sample(browLowerCheek, CHEEK_STEPS).slice(1),
  ];
  const brow = ruledGrid(browUpper, browLower, evenly(BROW_ROWS));
  helm.across('brow', gridCells(brow));

  // Straight rulings all the way round, so that these need bending only.
  const bandBottom = sample(bandLower, CROWN_STEPS + 1);
  const skirtBottom = sample(skirtLower, CROWN_STEPS + 1);
  helm.across(
    'band',
    gridCells(ruledGrid([...sample(crownRear, CROWN_STEPS), BACK_MIDDLE], bandBottom, evenly(BROW_ROWS))),
  );
  const skirt = ruledGrid(bandBottom, skirtBottom, evenly(CHEEK_ROWS));
  helm.across('skirt', gridCells(skirt));

  const cheek = coonsGrid(
    [...sample(eyeEdge, EYE_STEPS), ...browLower.slice(-CHEEK_STEPS)],
    sample(jawLine, EYE_STEPS + CHEEK_STEPS),
    sample(mouthEdge, CHEEK_ROWS),
    skirt.map((row) => row[0]),
  );
  helm.twins('cheek', gridCells(cheek));

  helm.across('neck-guard', gridCells(ruledGrid(skirtBottom, sample(guardLower, CROWN_STEPS + 1), evenly(GUARD_ROWS))));
  return helm.build();
}
