import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { KIT, sampleFiles, type SampleEntry, type SculptEntry } from '../../samples/sample-set.ts';
import { dot3, length3, sub3, unit3, vec3 } from '../../src/geom/vec.ts';
import { crossings, rayHit } from './crossings.ts';
import { edgeKey, patchesOf, sidesByEdge } from './patches.ts';
import { areaVector, faceNormal, readSample, trianglesOf, type SampleFiles } from './read-sample.ts';

interface Wanted {
  /** Pieces of foam by the name of their panel, and the windows in each. */
  readonly pieces: Readonly<Record<string, number>>;
  readonly shells: number;
  /** Overall width, height and depth, mm, from and to. */
  readonly size: readonly (readonly [number, number])[];
  readonly triangles: readonly [number, number];
  /** Least way from a face inwards to the next face, mm: foam on both walls, or foam under an overlapping plate and 2 mm of air. */
  readonly room: number;
}

const pairs = (...names: string[]): Record<string, number> =>
  Object.fromEntries(names.flatMap((name) => [`${name}-left`, `${name}-right`]).map((name) => [name, 0]));

const WANTED: Readonly<Record<string, Wanted>> = {
  helm: {
    pieces: { ...pairs('crown-front', 'crown-rear', 'keel', 'cheek'), brow: 0, band: 0, skirt: 0, 'neck-guard': 0 },
    shells: 1,
    // A head is about 160 x 208 mm and 230 mm from crown to chin; a peak and a neck guard stand out before and behind.
    size: [
      [200, 230],
      [260, 300],
      [300, 345],
    ],
    triangles: [150, 1500],
    room: 20,
  },
  bracer: {
    pieces: { 'elbow-flare': 0, body: 0, 'hand-flare': 0 },
    shells: 1,
    // An adult forearm is 230 to 280 mm from wrist to elbow; both ends flare.
    size: [
      [120, 150],
      [240, 290],
      [120, 150],
    ],
    triangles: [150, 1500],
    room: 20,
  },
  'shoulder-plate': {
    pieces: { 'dome-front': 0, 'dome-back': 0, 'upper-lame': 0, 'lower-lame': 0, lip: 0 },
    shells: 3,
    // An upper arm with its shoulder is about 130 mm through from front to back.
    size: [
      [180, 220],
      [160, 200],
      [150, 190],
    ],
    triangles: [150, 1500],
    room: 8,
  },
  'maul-head': {
    pieces: { collar: 0, ...pairs('shoulder', 'bell', 'chamfer', 'face') },
    shells: 1,
    size: [
      [220, 280],
      [110, 150],
      [110, 150],
    ],
    triangles: [150, 1500],
    room: 20,
  },
  lantern: {
    pieces: { base: 0, 'body-left': 3, 'body-right': 3, eaves: 0, roof: 0, vent: 0, 'cap-eaves': 0, cap: 0 },
    shells: 1,
    size: [
      [160, 220],
      [320, 380],
      [180, 230],
    ],
    triangles: [150, 1500],
    room: 10,
  },
};

const list = JSON.parse(readFileSync('samples/samples.json', 'utf8')) as readonly SampleEntry[];
const entries = list.filter((entry): entry is SculptEntry => 'objFile' in entry);
const samples = new Map<string, SampleFiles>(entries.map((e) => [e.id, readSample(e.objFile, e.seamFile)]));
const each = entries.map((entry) => [entry.id, samples.get(entry.id)!, WANTED[entry.id]] as const);

describe('the sample files', () => {
  it.each([...sampleFiles()])('%s is what the script writes, byte for byte', (name, text) => {
    expect(readFileSync(`samples/${name}`, 'utf8')).toBe(text);
  });

  it('are listed, the helm first, with foam they have room for', () => {
    expect(list.map((e) => e.id)).toEqual(['helm', 'bracer', 'shoulder-plate', 'maul-head', 'lantern', KIT.id]);
    for (const entry of entries) {
      expect(entry).toMatchObject({ unit: 'mm', upAxis: 'y', modelIs: 'face' });
      expect(entry.thickness).toBeGreaterThanOrEqual(5);
      expect(entry.thickness).toBeLessThanOrEqual(10);
    }
  });
});

describe.each(each)('%s', (_id, sample, wanted) => {
  const triangles = trianglesOf(sample);
  const sides = sidesByEdge(sample);

  it('is a surface: at most two faces at an edge, wound alike, one fan at a vertex, every vertex used once', () => {
    for (const row of sides.values()) {
      expect(row.length).toBeLessThanOrEqual(2);
      if (row.length === 2) expect(row[0].from).toBe(row[1].to);
    }
    // A rim that runs through a vertex twice, or beside a closed fan, would be two surfaces touching there.
    const leaving = new Map<number, number>();
    for (const [side, ...others] of sides.values()) {
      if (others.length === 0) leaving.set(side.from, (leaving.get(side.from) ?? 0) + 1);
    }
    for (const count of leaving.values()) expect(count).toBe(1);
    expect(new Set(sample.faces.flat()).size).toBe(sample.vertices.length);
    expect(new Set(sample.vertices.map(({ x, y, z }) => `${x} ${y} ${z}`)).size).toBe(sample.vertices.length);
    expect(patchesOf({ ...sample, seams: [] })).toHaveLength(wanted.shells);
  });

  it('has faces that are flat, convex and not slivers', () => {
    for (const [f, face] of sample.faces.entries()) {
      const normal = faceNormal(sample, f);
      const [first] = face.map((v) => sample.vertices[v]);
      for (const v of face) expect(Math.abs(dot3(normal, sub3(sample.vertices[v], first)))).toBeLessThan(0.02); // mm
      for (let k = 1; k + 1 < face.length; k++) {
        const vector = areaVector([first, sample.vertices[face[k]], sample.vertices[face[k + 1]]]);
        expect(length3(vector) / 2).toBeGreaterThan(20); // mm²
        expect(dot3(unit3(vector), normal)).toBeGreaterThan(0.999);
      }
    }
  });

  it('does not cut through itself', () => {
    expect(crossings(triangles)).toEqual([]);
  });

  it('is its own mirror image across x = 0, to the last digit, seams included', () => {
    const numberOf = new Map(sample.vertices.map(({ x, y, z }, v) => [`${x} ${y} ${z}`, v]));
    const twin = sample.vertices.map(({ x, y, z }) => numberOf.get(`${x === 0 ? 0 : -x} ${y} ${z}`));
    expect(twin).not.toContain(undefined);
    // A face is named by its corners from the lowest number on, in their sense of turning.
    const named = (corners: readonly number[]): string => {
      const k = corners.indexOf(Math.min(...corners));
      return [...corners.slice(k), ...corners.slice(0, k)].join(' ');
    };
    const faces = new Set(sample.faces.map(named));
    for (const face of sample.faces) expect(faces).toContain(named(face.map((v) => twin[v]!).reverse()));
    const seams = new Set(sample.seams.map(([a, b]) => edgeKey(a, b)));
    for (const [a, b] of sample.seams) expect(seams).toContain(edgeKey(twin[a]!, twin[b]!));
  });

  it('is of a real size and light', () => {
    for (const [k, axis] of (['x', 'y', 'z'] as const).entries()) {
      const values = sample.vertices.map((v) => v[axis]);
      const size = Math.max(...values) - Math.min(...values);
      expect(size).toBeGreaterThanOrEqual(wanted.size[k][0]);
      expect(size).toBeLessThanOrEqual(wanted.size[k][1]);
    }
    expect(triangles.length).toBeGreaterThanOrEqual(wanted.triangles[0]);
    expect(triangles.length).toBeLessThanOrEqual(wanted.triangles[1]);
  });

  it('has its outside outside', () => {
    // Seen from the middle of its box the surface must, on the whole, turn its back.
    const middle = vec3(
      ...((['x', 'y', 'z'] as const).map((k) => {
        const values = sample.vertices.map((v) => v[k]);
        return (Math.min(...values) + Math.max(...values)) / 2;
      }) as [number, number, number]),
    );
    let [away, towards] = [0, 0];
    for (const triangle of triangles) {
      const volume = dot3(areaVector(triangle), sub3(triangle[0], middle));
      if (volume > 0) away += volume;
      else towards -= volume;
    }
    expect(away).toBeGreaterThan(10 * towards);
  });

  it('has room for the foam behind it', () => {
    for (const triangle of triangles) {
      const [a, b, c] = triangle;
      const middle = vec3((a.x + b.x + c.x) / 3, (a.y + b.y + c.y) / 3, (a.z + b.z + c.z) / 3);
      const inward = sub3(vec3(0, 0, 0), unit3(areaVector(triangle)));
      for (const other of triangles) {
        if (other === triangle) continue;
        const hit = rayHit(middle, inward, other);
        if (hit > 0) expect(hit).toBeGreaterThanOrEqual(wanted.room);
      }
    }
  });

  it('names as seams only edges between two faces, each once, lower vertex first', () => {
    for (const [a, b] of sample.seams) {
      expect(a).toBeLessThan(b);
      expect(sides.get(edgeKey(a, b))).toHaveLength(2);
    }
    expect(new Set(sample.seams.map(([a, b]) => edgeKey(a, b))).size).toBe(sample.seams.length);
  });

  it('falls into the wanted pieces, discs but for windows, that foam can nearly follow by bending', () => {
    const patches = patchesOf(sample);
    expect(Object.fromEntries(patches.map((p) => [p.panels.join('+'), p.loops - 1]))).toEqual(wanted.pieces);
    expect(patches).toHaveLength(Object.keys(wanted.pieces).length);
    for (const { euler, loops, defectDeg } of patches) {
      expect(euler).toBe(2 - loops);
      expect(defectDeg).toBeLessThan(40);
    }
  });

  it('turns by no more than a blade can bevel at its seams: 45 degrees for each side', () => {
    for (const [a, b] of sample.seams) {
      const [s, t] = sides.get(edgeKey(a, b))!;
      const cosine = dot3(faceNormal(sample, s.face), faceNormal(sample, t.face));
      expect(cosine).toBeGreaterThan(0);
    }
  });
});
