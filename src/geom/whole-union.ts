import { Clipper64, ClipType, FillRule, type Path64 } from 'clipper2-ts';

/**
 * What rings of whole numbers cover together: a place belongs to it when the rings run round it more often counter-clockwise than clockwise.
 * @param rings packed x y, whole numbers under 2^25; outer rings counter-clockwise, holes clockwise.
 * @returns clean rings, outer ones counter-clockwise and holes clockwise; a new crossing is off by up to half a step in x and y.
 */
export function unionOfWhole(rings: readonly Float64Array[]): readonly Float64Array[] {
  const clipper = new Clipper64();
  clipper.preserveCollinear = false;
  clipper.addSubject(rings.map(pathOf));
  return executed(clipper, ClipType.Union);
}

/**
 * What two areas of whole numbers have in common, as {@link unionOfWhole}.
 * @param a,b rings of one area each.
 */
export function meetingOfWhole(a: readonly Float64Array[], b: readonly Float64Array[]): readonly Float64Array[] {
  const clipper = new Clipper64();
  clipper.addSubject(a.map(pathOf));
  clipper.addClip(b.map(pathOf));
  return executed(clipper, ClipType.Intersection);
}

/**
 * What of one area of whole numbers is not of another, as {@link unionOfWhole}.
 * @param a,b rings of one area each.
 */
export function restOfWhole(a: readonly Float64Array[], b: readonly Float64Array[]): readonly Float64Array[] {
  const clipper = new Clipper64();
  clipper.addSubject(a.map(pathOf));
  clipper.addClip(b.map(pathOf));
  return executed(clipper, ClipType.Difference);
}

function executed(clipper: Clipper64, kind: ClipType): readonly Float64Array[] {
  const found: Path64[] = [];
  clipper.execute(kind, FillRule.Positive, found);
  return found.map((path) => {
    const ring = new Float64Array(2 * path.length);
    for (let i = 0; i < path.length; i += 1) {
      ring[2 * i] = path[i].x;
      ring[2 * i + 1] = path[i].y;
    }
    return ring;
  });
}

function pathOf(ring: Float64Array): Path64 {
  const path: Path64 = [];
  for (let i = 0; i < ring.length; i += 2) path.push({ x: ring[i], y: ring[i + 1] });
  return path;
}
