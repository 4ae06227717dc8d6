/** Faces that meet under a sharper turn than this have an edge between them, as the cosine: 40 degrees. */
const CREASE_COS = Math.cos((40 * Math.PI) / 180);
/** Corners this near to each other are one, mm. */
const JOINED_MM = 1e-3;

/**
 * Normals of triangles that stand corner by corner: even over smooth surfaces, broken at edges.
 * @param corners  x y z per corner, three corners a triangle.
 */
export function creasedNormals(corners: Float32Array): Float32Array {
  const faces = faceNormals(corners);
  const around = new Map<string, number[]>();
  const keys = Array.from({ length: corners.length / 3 }, (_, c) => keyOf(corners, 3 * c));
  keys.forEach((key, c) => {
    const own = around.get(key);
    if (own === undefined) around.set(key, [Math.floor(c / 3)]);
    else own.push(Math.floor(c / 3));
  });
  const normals = new Float32Array(corners.length);
  keys.forEach((key, c) => {
    const own = 3 * Math.floor(c / 3);
    const length = lengthOf(faces, own);
    let [x, y, z] = [0, 0, 0];
    for (const face of around.get(key) ?? []) {
      const f = 3 * face;
      const across = faces[own] * faces[f] + faces[own + 1] * faces[f + 1] + faces[own + 2] * faces[f + 2];
      if (across < CREASE_COS * length * lengthOf(faces, f)) continue;
      [x, y, z] = [x + faces[f], y + faces[f + 1], z + faces[f + 2]];
    }
    const long = Math.hypot(x, y, z) || 1;
    normals.set([x / long, y / long, z / long], 3 * c);
  });
  return normals;
}

/** As long as twice the face is large, so that small faces weigh little. */
function faceNormals(corners: Float32Array): Float32Array {
  const faces = new Float32Array(corners.length / 3);
  for (let t = 0; 9 * t < corners.length; t += 1) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = corners.subarray(9 * t, 9 * t + 9);
    const [ux, uy, uz, vx, vy, vz] = [bx - ax, by - ay, bz - az, cx - ax, cy - ay, cz - az];
    faces.set([uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx], 3 * t);
  }
  return faces;
}

const lengthOf = (values: Float32Array, at: number): number => Math.hypot(values[at], values[at + 1], values[at + 2]);

const keyOf = (corners: Float32Array, at: number): string =>
  [0, 1, 2].map((k) => Math.round(corners[at + k] / JOINED_MM)).join(' ');
