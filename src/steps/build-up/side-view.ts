import type { BuildUp, CoreChoice, SideLine } from '../../model/build-up.ts';
import { standsOff } from './core-cut.ts';
import { isStraight, radiusAt, type Profile } from './profile.ts';
import type { WindingPath } from './winding-path.ts';

/** Chords that stand for a smooth span on the picture. */
const CHORDS = 24;

/** Points for each turn of a winding on the picture, and at most for all. */
const POINTS_PER_TURN = 24;
const MOST_POINTS = 4000;

/** Corners of the profile as a line, mm. */
export const profileLine = (profile: Profile): readonly (readonly [number, number])[] =>
  profile.flatMap((span, k) => {
    const count = isStraight(span) ? 1 : CHORDS;
    const all = Array.from({ length: count + 1 }, (_, i): readonly [number, number] => {
      const x = i === count ? span.to : span.from + ((span.to - span.from) * i) / count;
      return [x, radiusAt(span, x)];
    });
    const before = k === 0 ? null : profile[k - 1];
    // A corner that ends one span and begins the next stands once; a step has both.
    return before !== null && Math.abs(radiusAt(before, before.to) - all[0][1]) < 1e-9 ? all.slice(1) : all;
  });

/**
 * The core cut open along its axis, above and below: sheets as they lie before they are sanded, the finished surface over them.
 * Windings are drawn as they are seen from the side.
 */
export function sideView(
  core: CoreChoice,
  built: Pick<BuildUp, 'core' | 'layers' | 'skin' | 'staves'>,
  profile: Profile,
  paths: readonly WindingPath[],
  capRadii: readonly [number, number],
): readonly SideLine[] {
  const lines: SideLine[] = [];
  const box = (
    role: SideLine['role'],
    from: number,
    to: number,
    inside: number,
    outside: number,
    text?: string,
  ): void =>
    both(
      role,
      [
        [from, inside],
        [to, inside],
        [to, outside],
        [from, outside],
      ],
      text,
    );
  const both = (role: SideLine['role'], points: SideLine['points'], text?: string): void => {
    lines.push({ role, points, closed: true, ...(text === undefined ? {} : { text }) });
    lines.push({ role, points: points.map(([x, y]) => [x, -y] as const), closed: true });
  };
  const { cutMm, diameterMm, seats } = built.core;
  const half = diameterMm / 2;
  lines.push({
    role: 'core',
    closed: true,
    text: 'core',
    points: [
      [0, -half],
      [cutMm, -half],
      [cutMm, half],
      [0, half],
    ],
  });
  for (const layer of built.layers)
    box(
      'layer',
      layer.fromMm,
      layer.toMm,
      layer.insideRadiusMm,
      layer.insideRadiusMm + layer.thicknessMm,
      String(layer.number),
    );
  built.skin.forEach(({ fromMm, toMm, fromRadiusMm, toRadiusMm, thicknessMm }, i) => {
    const thick = thicknessMm * Math.hypot(1, (toRadiusMm - fromRadiusMm) / (toMm - fromMm));
    both(
      'skin',
      [
        [fromMm, fromRadiusMm - thick],
        [toMm, toRadiusMm - thick],
        [toMm, toRadiusMm],
        [fromMm, fromRadiusMm],
      ],
      `s${i + 1}`,
    );
  });
  for (const { fromMm, toMm, widthMm, thicknessMm, count, slopeDeg } of built.staves) {
    const [a, b] = widthMm.map((width) => width / 2 / Math.tan(Math.PI / count));
    const thick = thicknessMm / Math.cos((slopeDeg * Math.PI) / 180);
    both(
      'stave',
      [
        [fromMm, a - thick],
        [toMm, b - thick],
        [toMm, b],
        [fromMm, a],
      ],
      'staves',
    );
  }
  if (profile.length > 0) {
    const line = profileLine(profile);
    for (const sign of [1, -1])
      lines.push({ role: 'profile', closed: false, points: line.map(([x, y]) => [x, sign * y] as const) });
  }
  for (const [i, cap] of [core.startCap, core.endCap].entries()) {
    const off = standsOff(cap);
    if (cap === undefined || off === 0) continue;
    const [from, to] = i === 0 ? [-off, 0] : [cutMm, cutMm + off];
    lines.push({
      role: 'cap',
      closed: true,
      text: 'cap',
      points: [
        [from, -capRadii[i]],
        [to, -capRadii[i]],
        [to, capRadii[i]],
        [from, capRadii[i]],
      ],
    });
  }
  for (const { name, fromMm, toMm, holeMm } of seats) box('seat', fromMm, toMm, holeMm / 2, holeMm / 2 + SEAT_MM, name);
  for (const path of paths) lines.push({ role: 'winding', closed: false, points: windingLine(path) });
  return lines;
}

/** What sits on the core is hinted at by so much, mm: its own shape is another part's. */
const SEAT_MM = 8;

function windingLine({ parts, turned }: WindingPath): readonly (readonly [number, number])[] {
  const whole = parts[parts.length - 1].to - parts[0].from;
  const all = Math.min(MOST_POINTS, Math.max(2, Math.ceil((turned / (2 * Math.PI)) * POINTS_PER_TURN)));
  return parts.flatMap((part) => {
    const count = Math.max(2, Math.round((all * (part.to - part.from)) / whole));
    return Array.from({ length: count + 1 }, (_, i) => {
      const x = part.from + ((part.to - part.from) * i) / count;
      return [x, part.at(x).radius * Math.cos(part.turnedBefore + part.turned(x))] as const;
    });
  });
}
