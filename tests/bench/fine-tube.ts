import { contentHash } from '../../src/base/hash.ts';
import { newProject } from '../../src/project/new-project.ts';
import { writeProjectFile } from '../../src/project/project-file.ts';

/** A quarter of the tube: straight parts of its outline along the tube and round it, in the ring outside and, halved ring by ring, inside. */
const ALONG = 1536;
const ROUND = 1024;
const RINGS = 5;

const PANELS = 4;
const RADIUS_MM = 480;
const HEIGHT_MM = 1060;

/** How far seams and rims swing from straight, mm, and how often. */
const SWING_MM = 14;
const SWINGS = 9;

/**
 * A tube of four panels whose outlines have 5,120 corners each, finer towards their edges, and waved so that no two straight parts are in line. On
 * A4 it fills more than sixty pages. The text of a project file.
 */
export async function fineTubeProject(): Promise<string> {
  const { text, seams } = fineTube();
  const bytes = new TextEncoder().encode(text);
  const source = { hash: await contentHash(bytes), fileName: 'fine-tube.obj', format: 'obj' } as const;
  const first = newProject('Fine tube', source);
  const part = { ...first.parts[0], scale: { by: 'unit', unit: 'mm' } as const, seams: { edges: seams, paths: [] } };
  const project = { ...first, parts: [part] };
  return writeProjectFile(project, new Map([[source.hash, { fileName: source.fileName, bytes }]]));
}

function fineTube(): { text: string; seams: [number, number][] } {
  const lines: string[] = [];
  const faces: string[] = [];
  const numbers = new Map<string, number>();
  const vertex = (panel: number, u: number, v: number): number => {
    // Round the tube in shares of a turn; the last panel ends where the first begins.
    const share = (panel + u) % PANELS;
    const wave = Math.sin(2 * Math.PI * SWINGS * v) / (RADIUS_MM * 2);
    const angle = (2 * Math.PI * share) / PANELS + SWING_MM * wave;
    const y = v * HEIGHT_MM + SWING_MM * Math.sin((2 * Math.PI * SWINGS * share) / PANELS) * (2 * v - 1);
    const text = [RADIUS_MM * Math.sin(angle), y, RADIUS_MM * Math.cos(angle)].map((mm) => mm.toFixed(6)).join(' ');
    const known = numbers.get(text);
    if (known !== undefined) return known;
    numbers.set(text, lines.length);
    lines.push(`v ${text}`);
    return lines.length - 1;
  };
  const seams: [number, number][] = [];
  for (let panel = 0; panel < PANELS; panel += 1) {
    const at = (u: number, v: number): number => vertex(panel, u, v);
    const rings = Array.from({ length: RINGS + 1 }, (_, level) => ringOf(level, at));
    for (let level = 0; level < RINGS; level += 1) joinRings(rings[level], rings[level + 1], faces);
    fillInside(at, faces);
    const [, right] = rings[0];
    for (let i = 0; i + 1 < right.length; i += 1) seams.push([right[i], right[i + 1]]);
  }
  return { text: `${[...lines, ...faces].join('\n')}\n`, seams };
}

/** How far a ring lies inside the panel, as a share of it: its straight parts double from ring to ring. */
const insetOf = (level: number): number => (2 ** level - 1) / ROUND;

/** The four sides of a ring, below, right, above, left, each from corner to corner, counter-clockwise. */
function ringOf(level: number, at: (u: number, v: number) => number): readonly (readonly number[])[] {
  const inset = insetOf(level);
  const span = (i: number, count: number): number => inset + ((1 - 2 * inset) * i) / count;
  const [across, up] = [ROUND / 2 ** level, ALONG / 2 ** level];
  const line = (count: number, point: (share: number) => number): number[] =>
    Array.from({ length: count + 1 }, (_, i) => point(span(i, count)));
  const [low, high] = [inset, 1 - inset];
  return [
    line(across, (u) => at(u, low)),
    line(up, (v) => at(high, v)),
    line(across, (u) => at(1 - u, high)),
    line(up, (v) => at(low, 1 - v)),
  ];
}

function joinRings(
  outer: readonly (readonly number[])[],
  inner: readonly (readonly number[])[],
  faces: string[],
): void {
  for (const [side, fine] of outer.entries()) {
    const coarse = inner[side];
    for (let i = 0; i + 1 < coarse.length; i += 1) {
      faces.push(face(fine[2 * i], fine[2 * i + 1], coarse[i]));
      faces.push(face(fine[2 * i + 1], coarse[i + 1], coarse[i]));
      faces.push(face(fine[2 * i + 1], fine[2 * i + 2], coarse[i + 1]));
    }
  }
}

function fillInside(at: (u: number, v: number) => number, faces: string[]): void {
  const inset = insetOf(RINGS);
  const [across, up] = [ROUND / 2 ** RINGS, ALONG / 2 ** RINGS];
  const point = (i: number, j: number): number =>
    at(inset + ((1 - 2 * inset) * i) / across, inset + ((1 - 2 * inset) * j) / up);
  for (let i = 0; i < across; i += 1) {
    for (let j = 0; j < up; j += 1) {
      const [a, b, c, d] = [point(i, j), point(i + 1, j), point(i + 1, j + 1), point(i, j + 1)];
      faces.push(face(a, b, c), face(a, c, d));
    }
  }
}

const face = (a: number, b: number, c: number): string => `f ${a + 1} ${b + 1} ${c + 1}`;
