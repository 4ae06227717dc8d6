import { encode } from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { distanceToSegment } from '../../src/geom/distance-to-segment.ts';
import type { ArtSegment } from '../../src/model/artwork.ts';
import type { PictureChoice } from '../../src/model/artwork-choice.ts';
import { artworkFromPicture, USUAL_PICTURE, type PictureArtwork } from '../../src/pipeline/picture-artwork.ts';
import { flatPath } from '../../src/steps/artwork/segments.ts';
import { rectangleAt } from '../../src/pipeline/picture-artwork.ts';
import { readPathData } from '../../src/steps/artwork/path-data.ts';
import { expectOk } from '../support/expect-ok.ts';
import { bytes32, greyPng } from '../support/png-of.ts';
import { coverageShade, ringShade } from '../support/shade.ts';
import { sheetCamera } from '../support/sheet-camera.ts';

/** Samples along each side of a pixel: coverage to 1 %. */
const FINE = 6;

const trace = (bytes: Uint8Array, choice: Partial<PictureChoice> = {}): PictureArtwork =>
  expectOk(artworkFromPicture(bytes, { ...USUAL_PICTURE, ...choice }));
const fault = (bytes: Uint8Array, choice: Partial<PictureChoice> = {}): string => {
  const made = artworkFromPicture(bytes, { ...USUAL_PICTURE, ...choice });
  return made.ok ? 'made' : made.problem.code;
};
const codes = (bytes: Uint8Array, choice: Partial<PictureChoice> = {}): string[] => {
  const made = artworkFromPicture(bytes, { ...USUAL_PICTURE, ...choice });
  return made.ok ? made.notes.map(({ code }) => code) : [];
};
/** A length known by two places: so many px to the mm. */
const atPxPerMm = (density: number): Partial<PictureChoice> => ({
  size: { by: 'points', a: { x: 0, y: 0 }, b: { x: 100 * density, y: 0 }, mm: 100 },
});

const segmentsOf = ({ artwork }: PictureArtwork): readonly ArtSegment[] =>
  artwork.pieces.flatMap(({ regions }) =>
    regions.flatMap(({ outline, holes }) => [outline, ...holes].flatMap(({ path }) => path?.segments ?? [])),
  );
const ringsOf = ({ artwork }: PictureArtwork): Float64Array[] =>
  artwork.pieces.flatMap(({ regions }) =>
    regions.flatMap(({ outline, holes }) =>
      [outline, ...holes].map(({ path }) => flatPath(path ?? { segments: [], isClosed: true }, 5e-3)),
    ),
  );

/** Greatest distance both ways between closed lines, in the unit of their points. */
function hausdorff(a: readonly Float64Array[], b: readonly Float64Array[], step: number): number {
  const oneWay = (from: readonly Float64Array[], to: readonly Float64Array[]): number => {
    let worst = 0;
    for (const ring of from)
      for (let i = 0; i < ring.length; i += 2) {
        const j = (i + 2) % ring.length;
        const [dx, dy] = [ring[j] - ring[i], ring[j + 1] - ring[i + 1]];
        const count = Math.max(1, Math.ceil(Math.hypot(dx, dy) / step));
        for (let k = 0; k < count; k += 1) {
          const [x, y] = [ring[i] + (dx * k) / count, ring[i + 1] + (dy * k) / count];
          let best = Infinity;
          for (const other of to)
            for (let m = 0; m < other.length; m += 2) {
              const n = (m + 2) % other.length;
              best = Math.min(best, distanceToSegment(x, y, other[m], other[m + 1], other[n], other[n + 1]));
            }
          worst = Math.max(worst, best);
        }
      }
    return worst;
  };
  return Math.max(oneWay(a, b), oneWay(b, a));
}

describe('a circle', () => {
  const radius = 10;
  const discs = new Map<number, Uint8Array>();
  const disc = (density: number): Uint8Array => {
    const kept = discs.get(density);
    if (kept !== undefined) return kept;
    const side = 2 * radius * density + 20;
    const isIn = (x: number, y: number): boolean =>
      Math.hypot(x - side / 2 - 0.3, y - side / 2 + 0.2) < radius * density;
    const made = greyPng(side, side, coverageShade(isIn, FINE));
    discs.set(density, made);
    return made;
  };

  it.each([
    [10, 0.02],
    [4, 0.04],
  ])('at %i px/mm is four curves no farther than %f mm from the circle', (density, limit) => {
    const made = trace(disc(density), atPxPerMm(density));
    const [piece] = made.artwork.pieces;
    expect(segmentsOf(made).map(({ kind }) => kind)).toEqual(['cubic', 'cubic', 'cubic', 'cubic']);
    expect(Math.abs(piece.areaMm2 / (Math.PI * radius ** 2) - 1)).toBeLessThan(0.002);
    const middle = { x: (10 + radius * density + 0.3) / density, y: (10 + radius * density + 0.2) / density };
    for (const ring of ringsOf(made))
      for (let i = 0; i < ring.length; i += 2)
        expect(Math.abs(Math.hypot(ring[i] - middle.x, ring[i + 1] - middle.y) - radius)).toBeLessThan(limit);
    expect(made.trace.deviationMm).toBeLessThan(limit);
    expect([made.trace.corners, made.trace.isTwoTone]).toEqual([0, false]);
  });

  it('becomes an exact circle on request', () => {
    const made = trace(disc(10), { ...atPxPerMm(10), regulariseMm: 0.1 });
    expect(segmentsOf(made)).toMatchObject([{ kind: 'arc' }]);
    expect(made.artwork.pieces[0].areaMm2).toBeCloseTo(Math.PI * radius ** 2, 0);
  });

  it('keeps what it says of two tones: the true circle within half a pixel', () => {
    const side = 220;
    const made = trace(
      greyPng(
        side,
        side,
        coverageShade((x, y) => Math.hypot(x - 110.3, y - 109.8) < 100, 1),
      ),
      atPxPerMm(4),
    );
    expect(made.trace.isTwoTone).toBe(true);
    expect(made.trace.limitMm).toBeCloseTo(0.125, 2);
    expect(made.trace.deviationMm).toBeLessThanOrEqual(made.trace.limitMm);
    for (const ring of ringsOf(made))
      for (let i = 0; i < ring.length; i += 2)
        expect(Math.abs(Math.hypot(ring[i] - 110.3 / 4, ring[i + 1] - 110.2 / 4) - 25)).toBeLessThan(0.13);
  });
});

describe('a five-pointed star', () => {
  const turn = 0.1;
  const star = (radiusPx: number): Float64Array =>
    Float64Array.from(
      Array.from({ length: 10 }, (_, i) => {
        // Points at a fifth of a turn, each side in line with another: (3 - sqrt 5) / 2 inside.
        const r = radiusPx * (i % 2 === 0 ? 1 : (3 - Math.sqrt(5)) / 2);
        const angle = turn + (i * Math.PI) / 5;
        return [radiusPx + 10 + r * Math.cos(angle), radiusPx + 10 + r * Math.sin(angle)];
      }).flat(),
    );

  it.each([
    [10, 15, 0.02],
    [4, 15, 0.06],
  ])('at %i px/mm keeps its ten corners', (density, radiusMm, limit) => {
    const corners = star(radiusMm * density);
    const side = 2 * radiusMm * density + 20;
    const made = trace(greyPng(side, side, ringShade([corners], side, side)), atPxPerMm(density));
    const segments = segmentsOf(made);
    expect(segments.map(({ kind }) => kind)).toEqual(Array.from({ length: 10 }, () => 'line'));
    expect(made.trace.corners).toBe(10);
    for (let i = 0; i < 20; i += 2) {
      const [x, y] = [corners[i] / density, (side - corners[i + 1]) / density];
      expect(Math.min(...segments.map(({ from }) => Math.hypot(from.x - x, from.y - y)))).toBeLessThan(limit);
    }
    expect(made.trace.deviationMm).toBeLessThan(0.03);
    // A tip of 36 degrees is rounded off by the picture by about one and a half pixels.
    expect(made.trace.cornerMm * density).toBeLessThan(1.8);
  });
});

describe('a letter', () => {
  /** An R of our own: stem, bowl with its counter, and leg; in tenths of a mm, y down. */
  const LETTER =
    'M20 180V20H90C130 20 150 40 150 68C150 92 135 110 108 115L160 180H130L82 118H45V180ZM45 98H88C112 98 124 88 124 69C124 50 112 41 88 41H45Z';
  const outline = (scale: number): Float64Array[] =>
    expectOk(readPathData(LETTER)).map((path) => flatPath(path, 0.02).map((value) => value * scale));

  it.each([
    [10, 0.08],
    [4, 0.13],
  ])('at %i px/mm is its outline within %f mm', (density, limit) => {
    const rings = outline(density / 10);
    const side = 20 * density;
    const bytes = greyPng(side, side, ringShade(rings, side, side));
    const made = trace(bytes, atPxPerMm(density));
    expect(made.artwork.pieces).toMatchObject([{ name: 'area 1', regions: [{ holes: [{}] }] }]);
    const truth = outline(0.1).map((ring) => ring.map((value, i) => (i % 2 === 0 ? value : 20 - value)));
    expect(hausdorff(ringsOf(made), truth, 0.1)).toBeLessThan(limit);
    expect(made.trace.deviationMm).toBeLessThanOrEqual(0.1);
  });

  it('is as good from a JPEG within 0.1 mm', () => {
    const density = 8;
    const rings = outline(density / 10);
    const side = 20 * density;
    const shade = ringShade(rings, side, side);
    const data = new Uint8Array(side * side * 4).fill(255);
    for (let i = 0; i < side * side; i += 1)
      data.fill(Math.round(255 * shade(i % side, Math.floor(i / side))), 4 * i, 4 * i + 3);
    const made = trace(encode({ width: side, height: side, data }, 85).data, atPxPerMm(density));
    const truth = outline(0.1).map((ring) => ring.map((value, i) => (i % 2 === 0 ? value : 20 - value)));
    expect(hausdorff(ringsOf(made), truth, 0.1)).toBeLessThan(0.1);
  });
});

describe('what is asked of a picture', () => {
  const inRing = (x: number, y: number): boolean => {
    const r = Math.hypot(x - 60.2, y - 60.4);
    return (r < 50 && r > 30) || Math.hypot(x - 60, y - 60) < 10;
  };
  const shade = Float64Array.from({ length: 120 * 120 }, (_, i) =>
    coverageShade(inRing, FINE)(i % 120, Math.floor(i / 120)),
  );
  const shadeAt = (x: number, y: number): number => shade[120 * y + x];
  const ring = (chunks: Parameters<typeof greyPng>[3] = []): Uint8Array => greyPng(120, 120, shadeAt, chunks);

  it('nests a ring with its hole, and an island in it as a piece of its own', () => {
    const { artwork } = trace(ring(), atPxPerMm(10));
    expect(artwork.pieces.map(({ regions }) => regions.map(({ holes }) => holes.length))).toEqual([[1], [0]]);
    expect(artwork.pieces[0].areaMm2).toBeCloseTo(Math.PI * (25 - 9), 0);
    expect(artwork.pieces[1].areaMm2).toBeCloseTo(Math.PI, 1);
  });

  it('takes the light side: the picture with holes', () => {
    const { artwork } = trace(ring(), { ...atPxPerMm(10), isInverted: true });
    expect(artwork.pieces.map(({ regions }) => regions[0].holes.length)).toEqual([1, 1]);
    expect(artwork.pieces[0].areaMm2).toBeCloseTo(144 - Math.PI * 25, 0);
    expect(codes(ring(), { ...atPxPerMm(10), isInverted: true })).toContain('artwork/picture-edge');
  });

  it('leaves out specks and says how many', () => {
    const made = trace(ring(), { ...atPxPerMm(10), specksMm2: 5 });
    expect([made.artwork.pieces.length, made.trace.specks]).toEqual([1, 1]);
    expect(codes(ring(), { ...atPxPerMm(10), specksMm2: 5 })).toContain('artwork/picture-specks');
  });

  it('is as wide or as high as is asked, to the digits', () => {
    expect(trace(ring(), { size: { by: 'width', mm: 77 } }).artwork.widthMm).toBeCloseTo(77, 9);
    expect(trace(ring(), { size: { by: 'height', mm: 31 } }).artwork.heightMm).toBeCloseTo(31, 9);
  });

  it('takes the density of the file and says so', () => {
    const dense = ring([['pHYs', [...bytes32(10_000), ...bytes32(10_000), 1]]]);
    expect(trace(dense).artwork.widthMm).toBeCloseTo(10, 1);
    expect(codes(dense)).toContain('artwork/picture-scale');
    expect(fault(ring())).toBe('artwork/picture-no-size');
    const idle = expectOk(artworkFromPicture(ring([['pHYs', [...bytes32(2835), ...bytes32(2835), 1]]]), USUAL_PICTURE));
    expect(idle.artwork.widthMm).toBeCloseTo((100 / 72) * 25.4, 0);
    expect(trace(ring(), { size: { by: 'dpi', dpi: 254 } }).artwork.widthMm).toBeCloseTo(10, 1);
  });

  it('holds known lengths against it', () => {
    const { trace: told } = trace(ring(), {
      ...atPxPerMm(10),
      checks: [{ a: { x: 10, y: 60 }, b: { x: 110, y: 60 }, mm: 9.8 }],
    });
    expect(told.checks[0].foundMm).toBeCloseTo(10, 9);
  });

  it('traces within a crop alone', () => {
    const made = trace(ring(), {
      ...atPxPerMm(10),
      crop: [
        { x: 40, y: 40 },
        { x: 80, y: 80 },
      ],
    });
    expect(made.artwork.pieces).toHaveLength(1);
    expect(made.artwork.pieces[0].areaMm2).toBeCloseTo(Math.PI, 1);
  });

  it('evens out noise by a bell', () => {
    let seed = 1;
    const noise = (): number => {
      seed = (seed * 48271) % 2147483647;
      return seed / 2147483647 - 0.5;
    };
    const noisy = greyPng(120, 120, (x, y) => Math.min(1, Math.max(0, shadeAt(x, y) + 0.5 * noise())));
    const rough = trace(noisy, { ...atPxPerMm(10), smoothPx: 1 });
    expect(rough.artwork.pieces[0].areaMm2).toBeCloseTo(Math.PI * 16, 0);
  });

  it('finds the grey at given contrast, and takes a given one', () => {
    const pale = greyPng(60, 60, (x, y) => (Math.hypot(x - 29.5, y - 29.5) < 20 ? 0.6 : 0.8));
    expect(trace(pale, atPxPerMm(4)).trace.thresholdPct).toBeCloseTo(70, 0);
    expect(fault(pale, { ...atPxPerMm(4), thresholdPct: 50 })).toBe('artwork/picture-empty');
  });

  it('refuses what holds nothing', () => {
    expect(
      fault(
        greyPng(20, 20, () => 1),
        atPxPerMm(4),
      ),
    ).toBe('artwork/picture-empty');
    expect(fault(ring(), { ...atPxPerMm(10), specksMm2: 1000 })).toBe('artwork/picture-empty');
    expect(fault(ring(), { size: { by: 'points', a: { x: 3, y: 3 }, b: { x: 3, y: 3 }, mm: 10 } })).toBe(
      'artwork/known',
    );
    expect(fault(ring(), { size: { by: 'width', mm: 1e9 } })).toBe('artwork/known');
  });
});

describe('a photograph set straight', () => {
  const [width, height] = [800, 600];
  const camera = sheetCamera({ widthPx: width, heightPx: height, focalPx: 900 });
  /** A sheet with a disc of 60 mm and a bar of 80 x 20 mm: what light comes through each pixel, as sRGB. */
  const ofSheet = (points: readonly (readonly [number, number])[]): Float64Array =>
    Float64Array.from(points.map(([x, y]) => camera({ x, y })).flatMap(({ x, y }) => [x, y]));
  const disc = ofSheet(
    Array.from({ length: 720 }, (_, i) => [
      90 + 30 * Math.cos((i * Math.PI) / 360),
      110 + 30 * Math.sin((i * Math.PI) / 360),
    ]),
  );
  const bar = ofSheet([
    [170, 60],
    [250, 60],
    [250, 80],
    [170, 80],
  ]);
  const shade = ringShade([disc, bar], width, height);
  const toValue = (light: number): number => (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);
  const photo = greyPng(width, height, (x, y) => toValue(shade(x, y)));
  const [a, b, c, d] = (
    [
      [0, 200],
      [300, 200],
      [300, 0],
      [0, 0],
    ] as const
  ).map(([x, y]) => camera({ x, y }));

  it('gives disc and bar back in true size', () => {
    const made = trace(photo, { size: { by: 'photo', places: rectangleAt([a, b, c, d], 300, 200) }, specksMm2: 5 });
    const [large, small] = made.artwork.pieces;
    expect(Math.abs(large.areaMm2 / (900 * Math.PI) - 1)).toBeLessThan(0.002);
    for (const { from } of large.regions[0].outline.path?.segments ?? [])
      expect(Math.abs(Math.hypot(from.x - 90, from.y - 110) - 30)).toBeLessThan(0.1);
    const corners = small.regions[0].outline.path?.segments.map(({ from }) => from) ?? [];
    expect(corners).toHaveLength(4);
    for (const [x, y] of [
      [170, 60],
      [250, 60],
      [250, 80],
      [170, 80],
    ])
      expect(Math.min(...corners.map((at) => Math.hypot(at.x - x, at.y - y)))).toBeLessThan(0.1);
    expect(made.trace).toMatchObject({ light: 'photo', mmPerPx: null, scaledBy: 'photo' });
    expect(made.trace.photo?.camera?.impliedAspect).toBeCloseTo(1.5, 6);
  });

  it('would be off if light were not added up as light', () => {
    const places = rectangleAt([a, b, c, d], 300, 200);
    const made = trace(photo, { size: { by: 'photo', places }, light: 'drawn' });
    expect(Math.abs(made.artwork.pieces[0].areaMm2 / (900 * Math.PI) - 1)).toBeGreaterThan(0.004);
  });

  it('refuses what lies beyond the horizon', () => {
    const steep = rectangleAt(
      [
        { x: 380, y: 300 },
        { x: 420, y: 300 },
        { x: 790, y: 590 },
        { x: 10, y: 590 },
      ],
      100,
      1000,
    );
    const dark = greyPng(800, 600, (x, y) => (Math.hypot(x - 400, y - 250) < 60 ? 0 : 1));
    expect(fault(dark, { size: { by: 'photo', places: steep } })).toBe('artwork/photo-horizon');
  });
});
