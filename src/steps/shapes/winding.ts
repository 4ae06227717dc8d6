import { fail, ok } from '../../base/result.ts';
import { vec2, vec3, type Vec2, type Vec3 } from '../../geom/vec.ts';
import { curve } from '../../geom/outline-curve.ts';
import { integrate, runningIntegral } from '../../geom/integrate.ts';
import { degrees, measures, mm, mm2, plain } from './measures.ts';
import { piece, rolled, side, edge } from './pieces.ts';
import { bendWarnings, warning } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { K, length } from './size-fields.ts';

const STRIP = [
  length('strip_width', 'width of the strip', { default: 20, also: ['width'] }),
  length('overlap', 'how much of each turn lies on the one before; less than nothing leaves a gap', {
    default: 0,
    least: -1000,
    also: ['lap'],
  }),
  length('strip_thickness', 'thickness of the strip; 0: the diameter is that of its neutral surface', {
    default: 0,
    least: 0,
    most: 100,
    also: ['thickness'],
  }),
  K,
];

/**
 * A strip wound round a rod, with C = pi (D + 2 k t) round its neutral surface: its edges meet, or lie over one another by the overlap o,
 * where sin(lead angle) = (w - o) / C; pitch (w - o) / cos(lead angle), length turns sqrt(C² + pitch²) = covered length C / (w - o).
 * Its ends are cut flush with the rod's ends, at the lead angle from its length, so that it lies flat as a parallelogram.
 */
export const HELICAL_STRIP: ShapeKind = {
  name: 'helical_strip',
  also: ['winding', 'helix', 'helical_wrap', 'strip_winding'],
  says: 'Strip wound round a rod, edges meeting or overlapping: lead angle, pitch, turns and length.',
  sizes: [
    length('rod_diameter', 'outside diameter of the rod', {
      default: 30,
      also: ['diameter', 'pipe_diameter', 'core_diameter'],
    }),
    ...STRIP,
    length('covered_length', 'along the rod', { default: 600, also: ['length', 'rod_length'] }),
  ],
  develop: (sizes) => {
    const [rod, width, overlap, thickness, k, covered] = [
      'rod_diameter',
      'strip_width',
      'overlap',
      'strip_thickness',
      'K',
      'covered_length',
    ].map((name) => sizes.num(name));
    const around = Math.PI * (rod + 2 * k * thickness);
    const advance = width - overlap;
    if (!(advance > 0))
      return fail('shape/sizes', 'The overlap must be less than the width of the strip, or the winding never gets on.');
    if (!(advance < around))
      return fail(
        'shape/sizes',
        `The strip must advance by less than once round, ${around.toFixed(2)} mm: take a narrower strip or wrap it once instead.`,
      );
    const lead = Math.asin(advance / around);
    const pitch = advance / Math.cos(lead);
    const turns = covered / pitch;
    const long = turns * Math.hypot(around, pitch);
    // Cut flush with the rod's ends the strip is a parallelogram whose ends lean by the lead angle from its length.
    const skew = -width / Math.tan(lead);
    const made = piece(
      'strip',
      [
        side('lower edge', vec2(0, 0), vec2(long, 0)),
        side('end', vec2(long, 0), vec2(long + skew, width)),
        side('upper edge', vec2(long + skew, width), vec2(skew, width)),
        side('start', vec2(skew, width), vec2(0, 0)),
      ],
      {
        bend: rolled(around / (2 * Math.PI) / Math.cos(lead) ** 2),
        folds: overlap > 0 ? [{ from: vec2(0, overlap), to: vec2(long, overlap), angleDeg: 0 }] : [],
        marks: Array.from({ length: Math.min(500, Math.floor(turns)) }, (_, i) => ({
          name: `turn ${i + 1}`,
          at: vec2(((i + 1) * long) / turns, 0),
        })),
      },
    );
    const radius = around / (2 * Math.PI);
    return ok({
      measures: measures({
        lead_angle_deg: degrees(lead),
        helix_angle_deg: degrees(Math.PI / 2 - lead),
        pitch: mm(pitch),
        turns: plain(turns),
        strip_length: mm(long),
        length_per_turn: mm(Math.hypot(around, pitch)),
        circumference: mm(around),
        effective_diameter: mm(around / Math.PI),
        width_along_rod: mm(width / Math.cos(lead)),
        overlap_along_rod: mm(overlap / Math.cos(lead)),
        end_cut_angle_deg: degrees(lead),
        end_cut_length: mm(width / Math.sin(lead)),
        end_skew: mm(-skew),
        cut_length: mm(long - skew),
        strip_area: mm2(long * width),
        covered_area: mm2(around * covered),
        bend_radius: mm(radius / Math.cos(lead) ** 2),
        outer_diameter: mm(rod + 2 * thickness),
      }),
      pieces: [made],
      patches: [
        {
          piece: 'strip',
          // Along its ends the strip goes round the rod once for every advance of its width.
          facets: [turns, width / advance],
          solid: (u, v) => {
            // Places of the parallelogram on the helix: along the strip and square to it.
            const [along, off] = [long * u + skew * v, width * v];
            const [angle, z] = [
              (along * Math.cos(lead) - off * Math.sin(lead)) / radius,
              along * Math.sin(lead) + off * Math.cos(lead),
            ];
            return vec3(radius * Math.cos(angle), radius * Math.sin(angle), z);
          },
          flat: (u, v) => vec2(long * u + skew * v, width * v),
        },
      ],
      warnings: [
        ...bendWarnings({ thickness, k }, radius),
        ...(overlap > 0 && thickness > 0
          ? [
              warning(
                'shape/overlap',
                'Where turns overlap the strip stands up: its edge runs longer than stated there.',
              ),
            ]
          : []),
      ],
    });
  },
};

/** Turns at most of a strip that is laid flat as a curve. */
const MOST_TURNS = 1000;

/**
 * The same on a tapered rod: everywhere sin(lead) = (w - o) / C(s), s along the slant. Turns and length are integrals over the slant,
 * turns = ∫ ds / (C tan lead), length = ∫ C / (w - o) ds, which is lateral area over advance. A strip that follows this is curved when flat:
 * against a straight line its geodesic curvature is d lead / dl - sin(taper) cos(lead) / r, with sin(taper) = dr / ds (Liouville).
 */
export const TAPERED_HELICAL_STRIP: ShapeKind = {
  name: 'tapered_helical_strip',
  also: ['tapered_winding'],
  says: 'Strip wound round a tapered rod, edges meeting or overlapping all along: by numerical integration.',
  sizes: [
    length('large_diameter', 'diameter where the winding begins', {
      default: 40,
      also: ['start_diameter', 'rod_diameter'],
    }),
    length('small_diameter', 'diameter where it ends; it may be the larger one', {
      default: 26,
      also: ['end_diameter'],
    }),
    length('covered_length', 'along the rod', { default: 300, also: ['length', 'rod_length', 'height'] }),
    ...STRIP,
  ],
  develop: (sizes) => {
    const [d0, d1, covered, width, overlap, thickness, k] = [
      'large_diameter',
      'small_diameter',
      'covered_length',
      'strip_width',
      'overlap',
      'strip_thickness',
      'K',
    ].map((name) => sizes.num(name));
    const slant = Math.hypot(covered, (d0 - d1) / 2);
    const sinTaper = (d1 - d0) / 2 / slant;
    // The neutral surface lies off the rod by k t, square to its side.
    const out = k * thickness * (covered / slant);
    const [r0, r1] = [d0 / 2 + out, d1 / 2 + out];
    const radius = (s: number): number => r0 + ((r1 - r0) * s) / slant;
    const advance = width - overlap;
    if (!(advance > 0))
      return fail('shape/sizes', 'The overlap must be less than the width of the strip, or the winding never gets on.');
    const least = 2 * Math.PI * Math.min(r0, r1);
    if (!(advance < least))
      return fail(
        'shape/sizes',
        `The strip must advance by less than once round the thin end, ${least.toFixed(2)} mm: take a narrower strip.`,
      );
    const lead = (s: number): number => Math.asin(advance / (2 * Math.PI * radius(s)));
    const turnsPer = (s: number): number => 1 / (2 * Math.PI * radius(s) * Math.tan(lead(s)));
    const turns = integrate(turnsPer, 0, slant);
    if (turns > MOST_TURNS)
      return fail(
        'shape/sizes',
        `The strip would go round more than ${MOST_TURNS} times: take a wider strip, or wind in parts.`,
      );
    const long = integrate((s) => (2 * Math.PI * radius(s)) / advance, 0, slant);
    const curvature = (s: number): number => {
      const r = radius(s);
      const leadPerSlant = (-advance * sinTaper) / (2 * Math.PI * r * r) / Math.cos(lead(s));
      // Towards the thin end a parallel bends to the side of the apex (Liouville's formula).
      return leadPerSlant * Math.sin(lead(s)) - (sinTaper * Math.cos(lead(s))) / r;
    };
    const most = Math.max(...Array.from({ length: 65 }, (_, i) => Math.abs(curvature((slant * i) / 64))));
    if (most * width > 0.5)
      return fail(
        'shape/sizes',
        'The strip is too wide to follow this taper: take a narrower strip, or cover it with a wrap.',
      );
    const [begin, end] = [lead(0), lead(slant)];
    const strip = { slant, width, advance, sinTaper, radius, lead, turnsTo: runningIntegral(turnsPer, 0, slant, 256) };
    const flat = taperedFlat(strip);
    const made = piece(
      'strip',
      [
        edge(
          'lower edge',
          curve((s) => flat(s, 0), 0, slant),
        ),
        side('end', flat(slant, 0), flat(slant, 1)),
        edge(
          'upper edge',
          curve((s) => flat(s, 1), slant, 0),
        ),
        side('start', flat(0, 1), flat(0, 0)),
      ],
      { bend: rolled(Math.min(r0, r1), Math.max(r0, r1)) },
    );
    const onRod = taperedOnRod(strip);
    const isStraight = most * width < 1e-12;
    return ok({
      measures: measures({
        strip_length: mm(long),
        turns: plain(turns),
        lead_angle_start_deg: degrees(begin),
        lead_angle_end_deg: degrees(end),
        pitch_start: mm(advance / Math.cos(begin)),
        pitch_end: mm(advance / Math.cos(end)),
        mean_pitch: mm(covered / turns),
        circumference_start: mm(2 * Math.PI * r0),
        circumference_end: mm(2 * Math.PI * r1),
        slant: mm(slant),
        taper_angle_deg: degrees(Math.atan2(Math.abs(d0 - d1) / 2, covered)),
        covered_area: mm2(Math.PI * (r0 + r1) * slant),
        strip_area: mm2(long * width),
        least_flat_radius: isStraight ? undefined : mm(1 / most),
        edge_stretch_percent: plain(50 * most * width, '%'),
      }),
      pieces: [made],
      patches: [
        {
          piece: 'strip',
          facets: [turns, Math.max(ACROSS_SHARE, (width * Math.sin(lead(0))) / (2 * Math.PI * Math.min(r0, r1)))],
          solid: (u, v) => onRod(slant * u, v),
          flat: (u, v) => flat(slant * u, v),
        },
      ],
      warnings: [
        ...bendWarnings({ thickness, k }, Math.min(r0, r1)),
        ...(!isStraight && 0.5 * most * width > 0.03
          ? [
              warning(
                'shape/taper',
                `A straight strip must give ${(50 * most * width).toFixed(1)} % along its edges to follow this taper: cut it curved, or take a narrower strip.`,
              ),
            ]
          : []),
      ],
    });
  },
};

/** Fewest facets across a strip on its way round a taper, as a share of those of a turn. */
const ACROSS_SHARE = 1 / 16;

/** A taper under this is none: the strip is straight to far below rounding of any length. */
const NO_TAPER = 1e-9;

interface TaperedStrip {
  readonly slant: number;
  readonly width: number;
  readonly advance: number;
  /** dr / ds along the slant. */
  readonly sinTaper: number;
  readonly radius: (s: number) => number;
  readonly lead: (s: number) => number;
  /** Turns from the start to s. */
  readonly turnsTo: (s: number) => number;
}

/**
 * The strip laid flat, its lower edge beginning at the origin along +x: the cone laid flat is a sector, on which the edge lies r / sin(taper)
 * from the apex, turned by theta sin(taper); the upper edge runs beside it.
 */
function taperedFlat({
  width,
  advance,
  sinTaper,
  radius,
  lead,
  turnsTo,
}: TaperedStrip): (s: number, v: number) => Vec2 {
  const first = lead(0);
  const [c, d] = [Math.cos(first), Math.sin(first)];
  return (s, v) => {
    if (Math.abs(sinTaper) < NO_TAPER) return vec2((2 * Math.PI * radius(0) * s) / advance, v * width);
    // From the start the apex lies on +y where the rod grows thinner, on -y where it grows thicker.
    const turn = -2 * Math.PI * turnsTo(s) * sinTaper;
    const [from, to] = [-radius(0) / sinTaper, -radius(s) / sinTaper];
    const [x, y] = [to * Math.sin(turn), from - to + 2 * to * Math.sin(turn / 2) ** 2];
    const heading = turn + lead(s) - first;
    return vec2(c * x + d * y - v * width * Math.sin(heading), c * y - d * x + v * width * Math.cos(heading));
  };
}

/** The strip on its rod, whose axis is z: the place `v` of the width beside its lower edge, square to that in the flat. */
function taperedOnRod(strip: TaperedStrip): (s: number, v: number) => Vec3 {
  const { width, sinTaper, radius, lead, turnsTo } = strip;
  const cosTaper = Math.sqrt((1 - sinTaper) * (1 + sinTaper));
  return (s, v) => {
    const [r, side] = [radius(s), -v * width * Math.sin(lead(s))];
    const up = v * width * Math.cos(lead(s));
    // About the apex, r / sin(taper) away, what lies beside the edge is turned by so much and so much farther from it.
    const off = r + up * sinTaper;
    const at = Math.hypot(off, side * sinTaper);
    const onward =
      Math.abs(sinTaper) < NO_TAPER ? side / r : Math.atan2(side * Math.abs(sinTaper), off) / Math.abs(sinTaper);
    const along = Math.abs(sinTaper) < NO_TAPER ? s + up : s + (at - r) / sinTaper;
    const angle = 2 * Math.PI * turnsTo(s) + onward;
    return vec3(at * Math.cos(angle), at * Math.sin(angle), along * cosTaper);
  };
}
