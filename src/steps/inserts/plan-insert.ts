import { fail, ok, type Result } from '../../base/result.ts';
import { strokedRegions } from '../../geom/polygon-boolean.ts';
import { chainRing, layChain, reversedChain, type OutlineSegment } from '../../geom/outline.ts';
import type { Ring } from '../../geom/ring.ts';
import { terraced } from '../../mesh/extruded.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { squareEdge } from '../../model/plain-edge.ts';
import type {
  InsertCut,
  InsertForm,
  InsertGround,
  InsertKind,
  InsertPiece,
  InsertPlan,
  InsertWish,
  WayIn,
} from '../../model/insert.ts';
import { insertFindings } from './insert-findings.ts';
import { LEAST_LEFT_MM } from './least-left.ts';
import { coverForm, grownOutline, ringOfForm } from './outlines.ts';
import { thingOf, type Thing } from './thing.ts';
import { cutsInto, cutsThrough } from './wall-cuts.ts';

/** Foam of a frame round its pocket, mm [J]. */
const FRAME_MM = 15;
/** Room all round, mm: a cell must fall out, a magnet is pressed in, a strap must run [J]. */
const CLEARANCE_MM: Readonly<Record<InsertKind, number>> = {
  pane: 0.5,
  lamp: 0.5,
  battery: 0.5,
  switch: 0,
  magnet: 0,
  anchor: 1,
};
/** Room round the body of a switch behind its panel, where its clips and lugs are wider than the hole, mm [J]. */
const BEHIND_PANEL_MM = 1.5;
/** How far lid, plate or pane reach past what they cover, mm [J]. */
const LAP_MM: Readonly<Record<InsertKind, number>> = {
  pane: 8,
  lamp: 10,
  battery: 10,
  switch: 10,
  magnet: 10,
  anchor: 15,
};
const WAY_IN: Readonly<Record<InsertKind, WayIn>> = {
  pane: 'open',
  lamp: 'open',
  battery: 'lid',
  switch: 'open',
  magnet: 'closed',
  anchor: 'open',
};
/** Corners of plates are rounded so that they do not tear the foam, mm [J]. */
const PLATE_CORNER_MM = 5;

/**
 * What it takes to let a thing into a wall:
 *
 *     face ─────────────────┐ opening ┌───────────────      left: what stays behind the pocket
 *                  ┌────────┘         └────────┐
 *     wall         │          pocket           │            depth = thing + cover + flush lid
 *     back ────────┤                           ├──────
 *        frame ░░░░│                           │░░░░        so many that 2 mm stay behind it
 *
 * @returns fails as {@link thingOf}, with `insert/wall` on a broken wall and `insert/wish` on a length that is none.
 */
export function planInsert(wish: InsertWish, { wallMm, sheetsMm }: InsertGround): Result<InsertPlan> {
  const isLength = (mm: number): boolean => Number.isFinite(mm) && mm > 0 && mm < 1000;
  if (wallMm.length === 0 || sheetsMm.length === 0 || ![...wallMm, ...sheetsMm].every(isLength))
    return fail('insert/wall', 'The wall it is let into needs sheets of more than 0 mm: choose its foam.');
  const found = thingOf(wish);
  if (!found.ok) return found;
  const thing = found.value;
  const { kind, coverMm = 0, side = 'back' } = wish;
  const [clear, lap] = [wish.clearanceMm ?? CLEARANCE_MM[kind], wish.lapMm ?? LAP_MM[kind]];
  if (![clear, lap, coverMm].every((mm) => mm >= 0 && mm <= 200))
    return fail('insert/wish', `Room, lap and cover of the ${thing.name} are lengths from 0 to 200 mm: change them.`);
  const asked = wish.wayIn ?? WAY_IN[kind];
  const wall = wallMm.reduce((sum, mm) => sum + mm, 0);
  // A pane lies in the rebate of its window: what is let in is larger than the form that is seen.
  const body = kind === 'pane' ? coverForm(thing.form, lap) : thing.form;
  const hasPocket = !['switch', 'anchor'].includes(kind) || (kind === 'anchor' && thing.depthMm > 0);
  const held = kind === 'anchor' ? plateForm(thing, lap) : body;
  const [lidMm] = sheetsMm;
  const depthOf = (wayIn: WayIn): number =>
    hasPocket ? thing.depthMm + coverMm + (wayIn === 'flush-lid' ? lidMm : 0) : 0;
  const framesFor = (depth: number): number => Math.max(0, Math.ceil((depth + LEAST_LEFT_MM - wall) / lidMm - 1e-9));
  const mayFrame = wish.hasFrames ?? side === 'back';
  // On frames, which stand out anyhow, a lid lies as well as in them.
  const wayIn = asked === 'flush-lid' && mayFrame && framesFor(depthOf(asked)) > 0 ? 'lid' : asked;
  const pocketMm = depthOf(wayIn);
  const frames = mayFrame ? framesFor(pocketMm) : 0;
  const framesMm = frames * lidMm;
  const pocket = coverForm(held, clear);
  const channel = channelRing(wish);
  if (channel === null)
    return fail('insert/channel', `The channel of the ${thing.name} needs a width, a depth and two places or more.`);
  const letIn = [
    ...cutsInto(wallMm, side, pocketMm - framesMm, kind === 'pane' ? 'rebate' : 'pocket', ringOfForm(pocket)),
    ...(wayIn === 'flush-lid' ? cutsInto(wallMm, side, lidMm, 'rebate', ringOfForm(pocket, lap + clear)) : []),
  ];
  const cuts: readonly InsertCut[] = [
    ...letIn,
    ...openingsOf(wish, thing, clear).flatMap((ring) => cutsThrough(wallMm, side, ring, letIn)),
    ...(wish.channel === undefined ? [] : cutsInto(wallMm, side, wish.channel.depthMm, 'channel', channel)),
  ];
  const pieces = piecesOf({ wish, thing, pocket, held, side, wayIn, frames, lap, clear, sheetsMm });
  const left = pocketMm > 0 ? Math.max(0, wall + framesMm - pocketMm) : wall;
  const plan: Omit<InsertPlan, 'findings'> = {
    wish,
    name: thing.name,
    side,
    pocketMm,
    leftMm: left,
    frames,
    framesMm,
    cuts,
    pieces,
    cell: thing.cell,
    wayIn,
    body: bodyMesh(held, thing, { side, wall, framesMm, underMm: pocketMm - (hasPocket ? thing.depthMm : 0) }, kind),
  };
  return ok({ ...plan, findings: insertFindings(plan, thing, wall) });
}

/** The plate of an anchor goes round all of its slots. */
const plateForm = ({ form }: Thing, lap: number): InsertForm => coverForm(form, lap, PLATE_CORNER_MM);

/** What is cut right through the wall. */
function openingsOf({ kind, hasPlate = true }: InsertWish, thing: Thing, clear: number): readonly Ring[] {
  if (kind === 'pane') return [ringOfForm(thing.form)];
  // In its plate a switch has its hole; the foam behind makes room for its body.
  if (kind === 'switch') return [ringOfForm(thing.form, clear + (hasPlate ? BEHIND_PANEL_MM : 0))];
  if (kind === 'anchor') return slotsOf(thing, clear).map((slot) => chainRing(slot));
  return thing.opening === null ? [] : [ringOfForm(thing.opening)];
}

/** The slots of an anchor one by one, evenly about the zero. */
function slotsOf({ each, count, stepMm }: Thing, clear: number): readonly (readonly OutlineSegment[])[] {
  const own = grownOutline(each, clear);
  return Array.from({ length: count }, (_, i) =>
    layChain(own, { x: 0, y: (i - (count - 1) / 2) * stepMm, turnRad: 0 }),
  );
}

/** Empty where there is none; null where it has no width, depth or way. */
function channelRing({ channel }: InsertWish): Ring | null {
  if (channel === undefined) return new Float64Array(0);
  const { widthMm, depthMm, path } = channel;
  const isWay = path.length >= 2 && path.flat().every((mm) => Number.isFinite(mm) && Math.abs(mm) <= 1e4);
  if (!isWay || !(widthMm > 0 && widthMm <= 200) || !(depthMm > 0 && depthMm <= 200)) return null;
  const manner = { cap: 'round', corner: 'round', miterLimit: 2, deviationMm: 0.02 } as const;
  const regions = strokedRegions([{ points: path.flat(), isClosed: false }], widthMm, manner);
  return regions.at(0)?.outer ?? null;
}

interface PieceTask {
  readonly wish: InsertWish;
  readonly thing: Thing;
  readonly pocket: InsertForm;
  readonly held: InsertForm;
  readonly side: 'back' | 'face';
  readonly wayIn: WayIn;
  readonly frames: number;
  readonly lap: number;
  readonly clear: number;
  readonly sheetsMm: readonly number[];
}

function piecesOf(task: PieceTask): readonly InsertPiece[] {
  const { wish, thing, pocket, held, side, wayIn, frames, lap, clear, sheetsMm } = task;
  const [usual] = sheetsMm;
  const thinnest = sheetsMm.reduce((a, b) => Math.min(a, b));
  const edges = (name: string, segments: readonly OutlineSegment[]) => [squareEdge(name, segments)];
  const hole = (name: string, segments: readonly OutlineSegment[]) => edges(name, reversedChain(segments));
  const pieces: InsertPiece[] = [];
  if (frames > 0)
    pieces.push({
      key: 'frame',
      name: 'frame',
      quantity: frames,
      thicknessMm: usual,
      outline: edges('outline', grownOutline(pocket, FRAME_MM)),
      holes: [hole('pocket', grownOutline(pocket, 0))],
      liesOn: side,
    });
  if (wayIn === 'lid' || wayIn === 'flush-lid')
    pieces.push({
      key: 'lid',
      name: 'lid',
      quantity: 1,
      thicknessMm: usual,
      outline: edges('outline', grownOutline(pocket, lap)),
      holes: [],
      liesOn: wayIn === 'lid' ? side : null,
    });
  if (wish.kind === 'pane')
    pieces.push({
      key: 'pane',
      name: 'pane',
      quantity: 1,
      thicknessMm: sheetOf(sheetsMm, thing.depthMm, thing.depthMm),
      outline: edges('outline', grownOutline(held, 0)),
      holes: [],
      liesOn: null,
    });
  const { hasPlate = wish.kind === 'anchor' || wish.kind === 'switch' } = wish;
  if (!hasPlate) return pieces;
  const plate: InsertPiece =
    wish.kind === 'switch'
      ? {
          key: 'plate',
          name: 'plate',
          quantity: 1,
          thicknessMm: thing.panelMm === null ? thinnest : sheetOf(sheetsMm, ...thing.panelMm),
          outline: edges('outline', grownOutline(coverForm(thing.form, lap, PLATE_CORNER_MM), 0)),
          holes: [hole('switch', grownOutline(thing.form, 0))],
          liesOn: side === 'back' ? 'face' : 'back',
        }
      : {
          key: 'plate',
          name: 'plate',
          quantity: 1,
          thicknessMm: thinnest,
          outline: edges(
            'outline',
            grownOutline(wish.kind === 'anchor' ? held : coverForm(pocket, lap, PLATE_CORNER_MM), 0),
          ),
          holes:
            wish.kind === 'anchor'
              ? slotsOf(thing, clear).map((slot) => hole('slot', slot))
              : [hole('pocket', grownOutline(pocket, 0))],
          liesOn: wish.kind === 'anchor' && thing.depthMm > 0 ? null : side,
        };
  return [...pieces, plate];
}

/** The first sheet as thick as that, or null where none is. */
const sheetOf = (sheetsMm: readonly number[], least: number, most: number): number | null =>
  sheetsMm.find((mm) => mm > least - SAME_MM && mm < most + SAME_MM) ?? null;

/** Sheets whose thicknesses differ by less are one, mm. */
const SAME_MM = 0.05;

interface Place {
  readonly side: 'back' | 'face';
  readonly wall: number;
  readonly framesMm: number;
  /** From the mouth to the thing. */
  readonly underMm: number;
}

/** The thing itself in the frame of the insert; null where it has no body of its own. */
function bodyMesh(form: InsertForm, { depthMm }: Thing, place: Place, kind: InsertKind): Mesh | null {
  if (kind === 'anchor' || !(depthMm > 0)) return null;
  const { side, wall, framesMm, underMm } = place;
  const bottom =
    kind === 'switch'
      ? side === 'back'
        ? -depthMm
        : -wall
      : side === 'back'
        ? -wall - framesMm + underMm
        : -underMm - depthMm;
  return terraced([{ regions: [{ outer: ringOfForm(form), holes: [] }], bottom, top: bottom + depthMm }]);
}
