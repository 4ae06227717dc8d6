import { fail, ok, type Result } from '../../base/result.ts';
import { arc, chainSweep, line, onCircle, type OutlineSegment } from '../../geom/outline.ts';
import { vec2 } from '../../geom/vec.ts';
import { squareEdge } from '../../model/plain-edge.ts';
import type { PlainDraft, PlainLine, PlainStep, PlainWork } from '../../model/plain-piece.ts';
import type { ShapeEdge } from '../../model/shape.ts';
import type { StrapWish } from '../../model/trim.ts';

/** Least foam between two holes, and between a hole and an edge, in diameters of a hole: less tears out [shop rule]. */
const LEAST_LAND = 0.5;

/**
 * A strap in three pieces of plain form, and what is worked out of its sizes:
 *
 *     <- tab -> bar <------------ girth ------------>|<-- overlap -->  tip
 *     [  ]=slot=[]                       o o o o o                      >
 *
 * The fold of the tab goes round the bar by half a circle at the neutral surface, `pi (bar / 2 + k t)`. From the bar to the middle hole it is the girth; the
 * other holes stand beside it by their spacing, so it fits from `girth - (n - 1) / 2 spacing` to as much more. The keeper is a loop round two layers of strap.
 * @param neutralFraction  place of the surface that keeps its length, from the inside of a bend.
 */
export function makeStrap(wish: StrapWish, neutralFraction: number): Result<PlainWork> {
  const { girthMm, widthMm: w, thicknessMm: t, overlapMm, holes, tip, buckle, keeperWidthMm, isReinforced } = wish;
  const lengths = [
    girthMm,
    w,
    t,
    overlapMm,
    holes.spacingMm,
    holes.diameterMm,
    buckle.barMm,
    buckle.tabMm,
    keeperWidthMm,
  ];
  if (
    !lengths.every((one) => Number.isFinite(one) && one > 0) ||
    !(Number.isInteger(holes.count) && holes.count > 0 && holes.count <= 100)
  )
    return fail('trim/strap', 'A strap needs lengths above 0 and from 1 to 100 holes: change its sizes.');
  if (
    holes.diameterMm * (1 + 2 * LEAST_LAND) > w ||
    (holes.count > 1 && holes.spacingMm < holes.diameterMm * (1 + LEAST_LAND))
  )
    return fail(
      'trim/strap-holes',
      'The holes leave too little foam about them: make the strap wider, the holes smaller or their spacing larger.',
    );
  const half = w / 2;
  const reach = ((holes.count - 1) / 2) * holes.spacingMm;
  const room = holes.diameterMm * (0.5 + LEAST_LAND);
  if (overlapMm < reach + room)
    return fail(
      'trim/strap-overlap',
      `The last hole lies beyond the strap: let it overlap by ${Math.ceil(reach + room)} mm or more.`,
    );
  const tipMm = tip.kind === 'pointed' ? tip.lengthMm : half;
  if (!(tipMm > 0)) return fail('trim/strap', 'A pointed tip needs a length above 0: change it or make it rounded.');
  const { slotWidthMm } = buckle;
  if (!(slotWidthMm >= 0 && slotWidthMm < w - 2 * LEAST_LAND * slotWidthMm))
    return fail('trim/strap-slot', 'The slot for the prong is too wide for the strap: make it narrower.');

  // x from the end of the tab: tab, fold round the bar, girth to the middle hole, overlap, tip.
  const foldMm = Math.PI * (buckle.barMm / 2 + neutralFraction * t);
  const barAt = buckle.tabMm + foldMm / 2;
  const middleHole = barAt + girthMm;
  const straight = middleHole + overlapMm;
  if (middleHole - reach < buckle.tabMm + foldMm + buckle.tabMm)
    return fail(
      'trim/strap-short',
      'The holes reach into the tab of the buckle: fewer holes, a smaller spacing or a shorter tab.',
    );
  const corners = { a: vec2(0, -half), b: vec2(straight, -half), c: vec2(straight, half), d: vec2(0, half) };
  const tipSegments: readonly OutlineSegment[] =
    tip.kind === 'pointed'
      ? [line(corners.b, vec2(straight + tipMm, 0)), line(vec2(straight + tipMm, 0), corners.c)]
      : [arc(vec2(straight, 0), half, -Math.PI / 2, Math.PI)];
  const outline = [
    squareEdge('side', [line(corners.a, corners.b)]),
    squareEdge('tip', tipSegments),
    squareEdge('other side', [line(corners.c, corners.d)]),
    squareEdge('tab end', [line(corners.d, corners.a)]),
  ];
  const holePlaces = Array.from(
    { length: holes.count },
    (_, i) => middleHole + (i - (holes.count - 1) / 2) * holes.spacingMm,
  );
  const holeEdges = holePlaces.map((x, i) => [
    squareEdge(`hole ${i + 1}`, [clockwiseCircle(x, 0, holes.diameterMm / 2)]),
  ]);
  // The prong turns about the bar: its slot reaches as far to each side as the bar is thick, and over the fold.
  const slot = slotWidthMm > 0 ? [[squareEdge('slot', slotSegments(barAt, foldMm + buckle.barMm, slotWidthMm))]] : [];
  const strap = draft(
    'strap',
    'Strap',
    t,
    outline,
    [...holeEdges, ...slot],
    [across(buckle.tabMm, half, 'fold-in'), across(buckle.tabMm + foldMm, half, 'fold-in')],
    [
      `Fits from ${show(girthMm - reach)} to ${show(girthMm + reach)} mm round, ${show(girthMm)} at the middle hole; punch ${holes.count} holes of ${show(holes.diameterMm)} mm, ${show(holes.spacingMm)} mm apart.`,
    ],
  );
  // Round two layers of strap, its own neutral surface outside them; butt joined.
  const keeperMm = 2 * (w + 2 * t) + 2 * Math.PI * neutralFraction * t;
  const keeper = draft(
    'keeper',
    'Keeper loop',
    t,
    box(keeperMm, keeperWidthMm),
    [],
    [],
    [`Close it to a loop round two layers of strap, ${show(w)} by ${show(2 * t)} mm inside.`],
  );
  // A second layer from the end of the tab's glued part to short of the first hole.
  const [from, to] = [2 * buckle.tabMm + foldMm, middleHole - reach - room - holes.spacingMm];
  const canReinforce = isReinforced && to - from > w;
  const second = canReinforce
    ? [
        draft(
          'reinforcement',
          'Reinforcing layer',
          t,
          box(to - from, w),
          [],
          [],
          ['Glue it behind the strap between buckle and holes.'],
        ),
      ]
    : [];
  const pieces = [strap, keeper, ...second];
  const glueTab = 2 * buckle.tabMm * w;
  const step = (work: PlainStep['work'], keys: readonly string[], text: string, glueMm2: number): PlainStep => ({
    work,
    pieces: keys,
    text,
    glueMm2,
    cautions: glueMm2 > 0 ? ['adhesive'] : [],
  });
  const steps = [
    ...(canReinforce
      ? [step('lay', ['strap', 'reinforcement'], 'Glue the reinforcing layer behind the strap.', 2 * (to - from) * w)]
      : []),
    step('close', ['keeper'], 'Close the keeper end to end round the strap.', 2 * keeperWidthMm * t),
    step(
      'fold',
      ['strap'],
      `Put the prong through the slot, fold the tab round the bar of ${show(buckle.barMm)} mm and glue ${show(buckle.tabMm)} mm of it behind the strap.`,
      glueTab,
    ),
  ];
  const notes =
    isReinforced && !canReinforce
      ? [
          {
            code: 'trim/strap-reinforcement',
            severity: 'note' as const,
            text: 'Between buckle and holes there is no room for a reinforcing layer: it is left out.',
            where: {},
          },
        ]
      : [];
  return ok({ pieces, steps, findings: notes, form: null });
}

const show = (mm: number): string => String(Math.round(10 * mm) / 10);

function draft(
  key: string,
  name: string,
  thicknessMm: number,
  outline: readonly ShapeEdge[],
  holes: readonly (readonly ShapeEdge[])[],
  lines: readonly PlainLine[],
  notes: readonly string[],
): PlainDraft {
  const area = (ring: readonly ShapeEdge[]): number => chainSweep(ring.flatMap(({ segments }) => segments));
  const areaMm2 = holes.reduce((sum, hole) => sum + area(hole), area(outline));
  return {
    key,
    name,
    quantity: 1,
    thicknessMm,
    drawnAt: 1,
    outline,
    holes,
    bend: { kind: 'flat' },
    lines,
    notes,
    areaMm2,
    grainRad: 0,
  };
}

function box(long: number, wide: number): readonly ShapeEdge[] {
  const corners = [vec2(0, -wide / 2), vec2(long, -wide / 2), vec2(long, wide / 2), vec2(0, wide / 2)];
  return ['side', 'end', 'other side', 'start'].map((name, i) =>
    squareEdge(name, [line(corners[i], corners[(i + 1) % 4])]),
  );
}

const across = (x: number, half: number, role: PlainLine['role']): PlainLine => ({
  role,
  points: Float64Array.from([x, -half, x, half]),
  closed: false,
});

const clockwiseCircle = (x: number, y: number, radius: number): OutlineSegment =>
  arc(vec2(x, y), radius, 0, -2 * Math.PI);

/** A slot with round ends, clockwise. @param long  over its ends. */
function slotSegments(x: number, long: number, wide: number): readonly OutlineSegment[] {
  const r = wide / 2;
  const reach = Math.max(0, long / 2 - r);
  const [right, left] = [vec2(x + reach, 0), vec2(x - reach, 0)];
  return [
    line(onCircle(left, r, Math.PI / 2), onCircle(right, r, Math.PI / 2)),
    arc(right, r, Math.PI / 2, -Math.PI),
    line(onCircle(right, r, -Math.PI / 2), onCircle(left, r, -Math.PI / 2)),
    arc(left, r, -Math.PI / 2, -Math.PI),
  ];
}
