import type { Solid } from '../reference/handbook/polygon-solids.ts';

type Point = readonly [number, number, number];

/** A pyramid without floor whose tip has one plane for each side; every edge to the tip is a seam, or the first one alone. */
export function pyramid(sides: number, radius: number, height: number, isOnePiece = false): Solid {
  const at = Array.from({ length: sides }, (_, i) => i);
  const ring = at.map((i): Point => {
    const angle = (2 * Math.PI * i) / sides;
    return [radius * Math.cos(angle), radius * Math.sin(angle), 0];
  });
  return {
    corners: [...ring, [0, 0, height]],
    faces: at.map((i) => [i, (i + 1) % sides, sides]),
    seams: (isOnePiece ? [0] : at).map((i): [number, number] => [i, sides]),
  };
}

/** A corner of planes that go up and down in turn, as in a saddle of that many legs: its planes have no inner point in common. */
export function saddle(legs: number, radius: number, height: number): Solid {
  const at = Array.from({ length: 2 * legs }, (_, i) => i);
  const ring = at.map((i): Point => {
    const angle = (Math.PI * i) / legs;
    return [radius * Math.cos(angle), radius * Math.sin(angle), (i % 2 === 0 ? height : -height) * (1 + i / legs)];
  });
  return {
    corners: [...ring, [0, 0, 0]],
    faces: at.map((i) => [i, (i + 1) % (2 * legs), 2 * legs]),
    seams: at.map((i): [number, number] => [i, 2 * legs]),
  };
}

/** A sheet folded up and down at right angles every `step` mm, of one piece: like a bellows. */
export function bellows(folds: number, step: number, width: number): Solid {
  const profile = Array.from({ length: folds + 2 }, (_, i): readonly [number, number] => [
    step * Math.ceil(i / 2),
    step * Math.floor(i / 2),
  ]);
  return strip(profile, width);
}

/** A sheet bent along a profile in x and z, `width` wide along y, of one piece. */
export function strip(profile: readonly (readonly [number, number])[], width: number): Solid {
  const count = profile.length;
  return {
    corners: [0, width].flatMap((y) => profile.map(([x, z]): Point => [x, y, z])),
    faces: profile.slice(1).map((_, i) => [i, i + 1, count + i + 1, count + i]),
    seams: [],
  };
}

/** Fins of `length` that meet in one straight edge, `width` long: more than two, and the edge has no inside. */
export function fins(count: number, length: number, width: number): Solid {
  const at = Array.from({ length: count }, (_, i) => i);
  return {
    corners: [
      [0, 0, 0],
      [0, 0, width],
      ...at.flatMap((i): Point[] => {
        const angle = (2 * Math.PI * i) / count;
        const [x, y] = [length * Math.cos(angle), length * Math.sin(angle)];
        return [
          [x, y, 0],
          [x, y, width],
        ];
      }),
    ],
    faces: at.map((i) => [0, 2 + 2 * i, 3 + 2 * i, 1]),
    seams: [],
  };
}

/** A band with half a turn in it, which has one side alone. */
export function halfTurnedBand(sides: number, radius: number, width: number): Solid {
  const at = Array.from({ length: sides }, (_, i) => i);
  const corner = (i: number, sign: 1 | -1): Point => {
    const [turn, lean] = [(2 * Math.PI * i) / sides, (Math.PI * i) / sides];
    const out = radius + ((sign * width) / 2) * Math.cos(lean);
    return [out * Math.cos(turn), out * Math.sin(turn), ((sign * width) / 2) * Math.sin(lean)];
  };
  const last = (i: number): readonly [number, number] => (i === sides ? [1, 0] : [2 * i, 2 * i + 1]);
  return {
    corners: at.flatMap((i) => [corner(i, 1), corner(i, -1)]),
    faces: at.map((i) => [2 * i, 2 * i + 1, last(i + 1)[1], last(i + 1)[0]]),
    seams: [[0, 1]],
  };
}

/** A prism on a star of sharp points, every upright edge a seam. */
export function starTube(points: number, outer: number, inner: number, height: number): Solid {
  const count = 2 * points;
  const at = Array.from({ length: count }, (_, i) => i);
  const ring = (z: number): Point[] =>
    at.map((i) => {
      const [angle, r] = [(Math.PI * i) / points, i % 2 === 0 ? outer : inner];
      return [r * Math.cos(angle), r * Math.sin(angle), z];
    });
  return {
    corners: [...ring(0), ...ring(height)],
    faces: at.map((i) => [i, (i + 1) % count, count + ((i + 1) % count), count + i]),
    seams: at.map((i): [number, number] => [i, count + i]),
  };
}

/** A torus whose corners lie on the true surface, slit both ways. */
export function torus(around: number, across: number, big: number, small: number): Solid {
  const at = (i: number, j: number): number => (i % around) * across + (j % across);
  const corners: Point[] = [];
  const faces: number[][] = [];
  for (let i = 0; i < around; i += 1) {
    for (let j = 0; j < across; j += 1) {
      const [u, v] = [(2 * Math.PI * i) / around, (2 * Math.PI * (j + 0.5)) / across];
      const out = big + small * Math.cos(v);
      corners.push([out * Math.cos(u), out * Math.sin(u), small * Math.sin(v)]);
      faces.push([at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
    }
  }
  return {
    corners,
    faces,
    seams: [
      ...Array.from({ length: around }, (_, i): [number, number] => [at(i, 0), at(i + 1, 0)]),
      ...Array.from({ length: across }, (_, j): [number, number] => [at(0, j), at(0, j + 1)]),
    ],
  };
}

/** What of a solid has all its corners at or above z = 0, with other seams. */
export const upperHalf = ({ corners, faces }: Solid, seams: Solid['seams']): Solid => ({
  corners,
  faces: faces.filter((face) => face.every((v) => corners[v][2] > -1e-9)),
  seams,
});

/** The same solid moved and made larger. */
export const placed = ({ corners, faces, seams }: Solid, scale: number, [x, y, z]: Point): Solid => ({
  corners: corners.map(([a, b, c]): Point => [scale * a + x, scale * b + y, scale * c + z]),
  faces,
  seams,
});
