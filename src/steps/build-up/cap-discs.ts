import { arc, chainSweep } from '../../geom/outline.ts';
import type { CapWish, CoreChoice } from '../../model/build-up.ts';
import { squareEdge } from '../../model/plain-edge.ts';
import type { PlainDraft } from '../../model/plain-piece.ts';
import { radiusAt, type Profile } from './profile.ts';
import { mark } from './wrap-piece.ts';

/** How far from the axis a cap reaches, mm: as it was said, else to the finished surface at the core's end. */
export function capRadius(cap: CapWish | undefined, face: Profile, coreRadius: number, at: number): number {
  if (cap?.kind === 'discs' && cap.diameterMm !== undefined) return cap.diameterMm / 2;
  const span = face.find(({ from, to }) => from === at || to === at);
  return span === undefined ? coreRadius : Math.max(coreRadius, radiusAt(span, at));
}

/** Discs that close the ends, with the circle of the core on them. */
export function capDiscs(core: CoreChoice, radii: readonly [number, number]): readonly PlainDraft[] {
  return [core.startCap, core.endCap].flatMap((cap, i): readonly PlainDraft[] => {
    if (cap?.kind !== 'discs') return [];
    const [word, radius] = [i === 0 ? 'start' : 'end', radii[i]];
    const rim = [arc({ x: 0, y: 0 }, radius, 0, 2 * Math.PI)];
    const half = core.diameterMm / 2;
    return [
      {
        key: `cap-${word}`,
        name: `${word} cap`,
        quantity: cap.count,
        thicknessMm: cap.sheetMm,
        drawnAt: 1,
        outline: [squareEdge('rim', rim)],
        holes: [],
        bend: { kind: 'flat' },
        lines: half < radius ? [{ ...mark('placement', circle(half), 'core'), closed: true }] : [],
        notes: [`${cap.count} on the ${word} of the core.`],
        areaMm2: chainSweep(rim),
      },
    ];
  });
}

/** A circle as a polygon, fine enough to set a core down on. */
const circle = (radius: number): readonly number[] =>
  Array.from({ length: 72 }, (_, i) => [
    radius * Math.cos((2 * Math.PI * i) / 72),
    radius * Math.sin((2 * Math.PI * i) / 72),
  ]).flat();
