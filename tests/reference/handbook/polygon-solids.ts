/**
 * Round things as a low-poly modeller draws them: every corner on the true surface, flat sides between. `sides` corners go round,
 * corner i at the angle 2 pi i / sides from +x, counter-clockwise seen from +z; faces are wound to look outward.
 */
export interface Solid {
  readonly corners: readonly (readonly [number, number, number])[];
  readonly faces: readonly (readonly number[])[];
  /** The cuts that let it lie flat: pairs of corners. */
  readonly seams: readonly (readonly [number, number])[];
}

/** The file a maker would have: full precision, polygons as they are. */
export function objOf({ corners, faces }: Solid): Uint8Array {
  const rows = [
    ...corners.map((corner) => `v ${corner.join(' ')}`),
    ...faces.map((face) => `f ${face.map((v) => v + 1).join(' ')}`),
  ];
  return new TextEncoder().encode(`${rows.join('\n')}\n`);
}

const angleOf = (i: number, sides: number): number => (2 * Math.PI * i) / sides;

/** A cone without floor: base corners 0 .. sides - 1 in z = 0, apex last; slit from base corner 0 to the apex. */
export function cone(sides: number, radius: number, height: number): Solid {
  const base = Array.from({ length: sides }, (_, i) => onCircle(i, sides, radius, 0));
  return {
    corners: [...base, [0, 0, height]],
    faces: base.map((_, i) => [i, (i + 1) % sides, sides]),
    seams: [[0, sides]],
  };
}

/**
 * A tube between a ring in z = 0 and a ring whose heights may differ from corner to corner: lower corners 0 .. sides - 1, upper ones
 * sides .. 2 sides - 1; slit along corner 0. Sides are flat: their two edges along the tube are parallel or meet in one point.
 */
export function tube(sides: number, lower: number, upper: number, heightAt: (angle: number) => number): Solid {
  const at = Array.from({ length: sides }, (_, i) => i);
  return {
    corners: [
      ...at.map((i) => onCircle(i, sides, lower, 0)),
      ...at.map((i) => onCircle(i, sides, upper, heightAt(angleOf(i, sides)))),
    ],
    faces: at.map((i) => [i, (i + 1) % sides, sides + ((i + 1) % sides), sides + i]),
    seams: [[0, sides]],
  };
}

/**
 * Two tubes cut at 45 degrees and joined on the cut z = height + x: a right-angled elbow. Corners of the first as in {@link tube},
 * then the free end of the second, which is the first seen in the mirror of the cut. Slit along both, and all round the cut.
 */
export function elbow(sides: number, radius: number, height: number): Solid {
  const first = tube(sides, radius, radius, (angle) => height + radius * Math.cos(angle));
  const at = Array.from({ length: sides }, (_, i) => i);
  // Mirror in the plane z - x = height: x and z - height change places.
  const mirrored = at.map((i) => {
    const [x, y, z] = first.corners[i];
    return [z - height, y, x + height] as const;
  });
  return {
    corners: [...first.corners, ...mirrored],
    faces: [
      ...first.faces,
      ...at.map((i) => [2 * sides + i, sides + i, sides + ((i + 1) % sides), 2 * sides + ((i + 1) % sides)]),
    ],
    seams: [
      ...first.seams,
      [sides, 2 * sides],
      ...at.map((i): [number, number] => [sides + i, sides + ((i + 1) % sides)]),
    ],
  };
}

/**
 * A strip wound up a rod of `sides` flat sides, over `count` of them, `rise` wide along the rod: lower corners 0 .. count, the upper ones
 * after them. A strip as wide as its pitch must end before its turn is full: its corners would become one.
 */
export function windingStrip(sides: number, count: number, radius: number, pitch: number, rise: number): Solid {
  const at = Array.from({ length: count + 1 }, (_, i) => i);
  const edge = (above: number): (readonly [number, number, number])[] =>
    at.map((i) => onCircle(i, sides, radius, (pitch * i) / sides + above));
  return {
    corners: [...edge(0), ...edge(rise)],
    faces: at.slice(1).map((i) => [i - 1, i, count + 1 + i, count + i]),
    seams: [],
  };
}

/**
 * One of `gores` gores of a ball, from pole to pole in `rows` even steps: corner 0 the lower pole, then rows of `columns + 1` corners from
 * the left edge to the right one as seen from outside, the upper pole last.
 * @param place  a point for an azimuth counted from the gore's middle and a latitude, radians.
 */
export function gore(
  gores: number,
  rows: number,
  columns: number,
  place: (azimuth: number, latitude: number) => readonly [number, number, number],
): Solid {
  const corners = [place(0, -Math.PI / 2)];
  for (let j = 1; j < rows; j += 1) {
    for (let i = 0; i <= columns; i += 1)
      corners.push(place(((2 * i) / columns - 1) * (Math.PI / gores), Math.PI * (j / rows - 0.5)));
  }
  corners.push(place(0, Math.PI / 2));
  const at = (j: number, i: number): number => 1 + (j - 1) * (columns + 1) + i;
  const faces: number[][] = [];
  for (let i = 0; i < columns; i += 1) {
    faces.push([0, at(1, i + 1), at(1, i)]);
    for (let j = 1; j + 1 < rows; j += 1) faces.push([at(j, i), at(j, i + 1), at(j + 1, i + 1), at(j + 1, i)]);
    faces.push([at(rows - 1, i), at(rows - 1, i + 1), corners.length - 1]);
  }
  return { corners, faces, seams: [] };
}

/** A gutter: flat sides between `sides + 1` corners of an arc of a circle of `radius` over `angle` radians, and `length` long. */
export function gutter(sides: number, radius: number, angle: number, length: number): Solid {
  const ends = [0, length].flatMap((y) =>
    Array.from({ length: sides + 1 }, (_, i): readonly [number, number, number] => {
      const turn = angle * (i / sides - 0.5);
      return [radius * Math.sin(turn), y, radius * Math.cos(turn)];
    }),
  );
  return {
    corners: ends,
    faces: Array.from({ length: sides }, (_, i) => [i, i + 1, sides + 2 + i, sides + 1 + i]),
    seams: [],
  };
}

/**
 * Two flat panels that meet along y, each `length` long across their edge and `width` along it; the second turns down by `fold` radians
 * from the first, whose outside looks to +z. Parted along the edge they share, corners 1 and 2.
 */
export function panels(length: number, width: number, fold: number): Solid {
  const [x, z] = [length * Math.cos(fold), -length * Math.sin(fold)];
  return {
    corners: [
      [-length, 0, 0],
      [0, 0, 0],
      [0, width, 0],
      [-length, width, 0],
      [x, 0, z],
      [x, width, z],
    ],
    faces: [
      [0, 1, 2, 3],
      [1, 4, 5, 2],
    ],
    seams: [[1, 2]],
  };
}

function onCircle(i: number, sides: number, radius: number, z: number): [number, number, number] {
  const angle = angleOf(i, sides);
  return [radius * Math.cos(angle), radius * Math.sin(angle), z];
}

/** A cube of 100 mm, its bottom left open, every edge a seam; the first face is its top. */
export const TRAY: Solid = {
  corners: [0, 1, 2, 3, 4, 5, 6, 7].map((i) => [100 * (i & 1), 100 * ((i >> 1) & 1), 100 * (i >> 2)] as const),
  faces: [
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ],
  seams: [
    [4, 5],
    [5, 7],
    [6, 7],
    [4, 6],
    [0, 4],
    [1, 5],
    [3, 7],
    [2, 6],
  ],
};
