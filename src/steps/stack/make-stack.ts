import { letters } from '../../base/ids.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { buildTree } from '../../geom/bvh.ts';
import { isInRings } from '../../geom/in-rings.ts';
import type { Region } from '../../geom/polygon-boolean.ts';
import { widestSpot } from '../../geom/widest-spot.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { Stack, StackHole, StackLayer, StackPiece, StackRule, StackWish } from '../../model/stack.ts';
import { chooseSheets } from './choose-sheets.ts';
import { coreHole, type CoreHole } from './core-hole.ts';
import { coveredLayer } from './cover.ts';
import { disc, placeDowels, type DowelPlace } from './dowels.ts';
import { solidInFrame, type Solid } from './frame.ts';
import { hollowOf } from './hollow.ts';
import { restsOn, type GluedPiece } from './joints.ts';
import { layerOutline } from './layer-outline.ts';
import { ORDER_SAMPLES, orderSheets } from './order-sheets.ts';
import { placingLines } from './placing-lines.ts';
import { areaBoundOf, areaOf, covered, fineGrid, meeting, ringsOf, without, type FineGrid } from './regions.ts';
import { fillingDepth, sandingDepth, volumeOutside, type FoamSheet } from './rest.ts';
import { sideView } from './side-view.ts';
import { sectionArea, sectionAt, slabBetween, type Slab } from './slab.ts';
import {
  bareJoints,
  bareLayers,
  coreFindings,
  heightFinding,
  overlapFinding,
  pieceFindings,
} from './stack-findings.ts';

/** A layer on its way. */
interface Draft {
  readonly thickness: number;
  readonly from: number;
  readonly to: number;
  readonly slab: Slab;
  readonly outline: readonly Region[];
  /** What of the layer lies wholly in the solid: where holes cannot come out after sanding. */
  readonly sound: readonly Region[];
  readonly hollow: readonly Region[];
}

/**
 * A closed mesh as layers of sheet. Under a cover the layers are those of the smaller face, and as many as the cover leaves room for.
 * @param mesh  closed, mm, faces outward.
 * @returns fails with `stack/open`, `stack/empty`, `stack/inside-out`, `stack/axis`, `stack/sheets`, `stack/layers`, `stack/too-low` or
 *   `stack/no-core`.
 */
export function makeStack(mesh: Mesh, wish: StackWish): Result<Stack> {
  const framed = solidInFrame(mesh, wish.axis);
  if (!framed.ok) return framed;
  const solid = framed.value;
  const skin = wish.cover === undefined ? ok(solid) : solidInFrame(wish.cover.skin, wish.axis);
  if (!skin.ok) return skin;
  const { min, max } = solid;
  const heightMm = max.z - min.z;
  const [foot, top] = coverAtEnds(solid, skin.value, wish.cover?.mm ?? 0);
  const room = heightMm - foot - top;
  const rule = wish.cover === undefined ? wish.rule : 'smaller';
  if (!(room > 0)) return noCore(heightMm);
  const chosen = chooseSheets(room, wish.sheetsMm, rule);
  if (!chosen.ok) return chosen;
  const rest = room - chosen.value.reduce((sum, one) => sum + one, 0);
  const start = foot + (wish.seat === 'bottom' ? 0 : wish.seat === 'top' ? rest : rest / 2);
  const grid = fineGrid(Math.max(max.x - min.x, max.y - min.y) + 2);
  const sheets = orderSheets(chosen.value, start, heightMm, areasAlong(solid, new Set(chosen.value).size));
  const all = draftsOf(solid, skin.value, sheets, min.z + start, { ...wish, rule }, grid);
  const drafts = wish.cover === undefined ? all : withoutBareEnds(all);
  if (drafts.length === 0) return noCore(heightMm);
  const core = wish.core === undefined ? null : coreHole(drafts.map(solidPart), wish.core, grid);
  const cutFree = drafts.map((draft, i) => {
    const sound = without(draft.sound, draft.hollow, grid);
    if (core?.through[i] !== true) return sound;
    return without(sound, [{ outer: disc(core.at, core.radiusMm / Math.cos(Math.PI / 24)), holes: [] }], grid);
  });
  const dowels = wish.dowels === undefined ? [] : placeDowels(cutFree, wish.dowels, grid);
  const foam = drafts.map((draft, i) => foamOf(draft, core?.through[i] === true ? core : null, grid));
  const tree = buildTree(solid.surface.positions, solid.surface.triangles);
  const layers: StackLayer[] = [];
  let twiceMm3 = 0;
  for (const [i, draft] of drafts.entries()) {
    const { from, to, slab, outline, thickness } = draft;
    const outlineAreaMm2 = areaOf(outline);
    const areaBoundMm2 = areaBoundOf(outline, grid);
    const near = drafts
      .slice(Math.max(0, i - 1), i + 2)
      .map((one): FoamSheet => ({ regions: one.outline, from: one.from, to: one.to }));
    const rests = restsOf(
      solid,
      tree,
      draft,
      near,
      rule,
      outlineAreaMm2 * (to - from),
      areaBoundMm2 * (to - from),
      grid,
    );
    const [lowerSection, upperSection] = [sectionAt(solid, from, 'over'), sectionAt(solid, to, 'under')];
    for (const section of [lowerSection, upperSection])
      twiceMm3 += ((to - from) / 2) * Math.max(0, sectionArea(section) - areaOf(covered(section, grid)));
    const next = i + 1 < drafts.length ? drafts[i + 1].outline : [];
    layers.push({
      number: i + 1,
      thicknessMm: thickness,
      fromMm: from,
      toMm: to,
      pieces: piecesOf(i + 1, foam[i].regions, next, holesIn(i, foam[i].core, dowels, wish), (piece) =>
        restsOn(piece, layers.at(-1)?.pieces ?? [], grid),
      ),
      outline: ringsOf(outline),
      lowerSection,
      upperSection,
      outlineAreaMm2,
      areaBoundMm2,
      solidMm3: slab.volumeMm3,
      ...rests,
    });
  }
  const viewed = drafts.map(({ from, to }, i) => ({ number: i + 1, from, to, regions: foam[i].regions }));
  const middle = { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2 };
  const inLayers = layers.reduce((sum, { solidMm3 }) => sum + solidMm3, 0);
  return ok({
    frame: solid.frame,
    rule,
    heightMm,
    stackedMm: layers.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0),
    layers,
    dowels: dowels.map(({ at, first, last }) => ({
      x: at.x,
      y: at.y,
      fromLayer: first + 1,
      toLayer: last + 1,
      lengthMm: drafts[last].to - drafts[first].from,
    })),
    solidMm3: solid.volumeMm3,
    stackedMm3: layers.reduce((sum, { outlineAreaMm2, thicknessMm }) => sum + outlineAreaMm2 * thicknessMm, 0),
    foamMm3: layers.reduce(
      (sum, { pieces, thicknessMm }) => sum + thicknessMm * pieces.reduce((area, { areaMm2 }) => area + areaMm2, 0),
      0,
    ),
    beyondMm3: Math.max(0, solid.volumeMm3 - inLayers),
    sideViews: [
      sideView(solid, viewed, 'x', core?.at.y ?? middle.y),
      sideView(solid, viewed, 'y', core?.at.x ?? middle.x),
    ],
    findings: [
      ...(wish.dowels === undefined ? [] : bareJoints(cutFree, dowels, grid)),
      ...bareLayers(drafts, { ...wish, rule }),
      ...coreFindings(core, drafts),
      ...(wish.cover === undefined ? heightFinding(rest, rule) : []),
      ...pieceFindings(solid, layers, grid),
      ...overlapFinding(twiceMm3, solid.volumeMm3),
    ],
  });
}

const noCore = (heightMm: number): Result<never> =>
  fail(
    'stack/no-core',
    `No sheet fits under the cover: the solid is ${Number(heightMm.toFixed(1))} mm high along the axis. Take a thinner cover or thinner sheets, or build it of clay alone.`,
  );

/** What the cover takes off the height at foot and top: nothing where the skin reaches on by it. */
const coverAtEnds = ({ min, max, snapMm }: Solid, skin: Solid, mm: number): readonly [number, number] => [
  Math.max(0, mm - Math.max(0, min.z - skin.min.z) - snapMm),
  Math.max(0, mm - Math.max(0, skin.max.z - max.z) - snapMm),
];

/** Layers at either end that nothing is left of are none. */
function withoutBareEnds(drafts: readonly Draft[]): readonly Draft[] {
  const filled = drafts.flatMap(({ outline }, i) => (outline.length > 0 ? [i] : []));
  return filled.length === 0 ? [] : drafts.slice(filled[0], filled[filled.length - 1] + 1);
}

/** Side count of a core's hole where it is cut out of the outline. */
const CORE_SIDES = 96;

/** What is foam of a layer. A core that comes out into the hollow is cut out of the outline, so that no hole is left to drill; else it is one. */
function foamOf(
  { outline, hollow }: Draft,
  core: CoreHole | null,
  grid: FineGrid,
): { readonly regions: readonly Region[]; readonly core: CoreHole | null } {
  if (hollow.length === 0) return { regions: outline, core };
  const regions = without(outline, hollow, grid);
  if (core === null) return { regions, core };
  const round = [{ outer: disc(core.at, core.radiusMm / Math.cos(Math.PI / CORE_SIDES), CORE_SIDES), holes: [] }];
  const shared = areaOf(meeting(hollow, round, grid));
  if (shared <= areaBoundOf(round, grid)) return { regions, core };
  return { regions: without(regions, round, grid), core: null };
}

function holesIn(
  layer: number,
  core: CoreHole | null,
  dowels: readonly DowelPlace[],
  wish: StackWish,
): readonly StackHole[] {
  const radiusMm = ((wish.dowels?.diameterMm ?? 0) + (wish.dowels?.clearanceMm ?? 0)) / 2;
  return [
    ...(core === null ? [] : [{ kind: 'core' as const, ...core.at, radiusMm: core.radiusMm }]),
    ...dowels
      .filter(({ first, last }) => first <= layer && layer <= last)
      .map(({ at }) => ({ kind: 'dowel' as const, x: at.x, y: at.y, radiusMm })),
  ];
}

/** Areas of sections from foot to top; not looked at where all sheets are of one thickness. */
function areasAlong(solid: Solid, kinds: number): readonly number[] {
  if (kinds < 2) return [0];
  const { min, max } = solid;
  return Array.from({ length: ORDER_SAMPLES + 1 }, (_, i) =>
    sectionArea(sectionAt(solid, min.z + ((max.z - min.z) * i) / ORDER_SAMPLES, i === 0 ? 'over' : 'under')),
  );
}

function draftsOf(
  solid: Solid,
  skin: Solid,
  sheets: readonly number[],
  start: number,
  { rule, wallMm, openAt, core, dowels, cover }: StackWish,
  grid: FineGrid,
): readonly Draft[] {
  let from = start;
  return sheets.map((thickness) => {
    const own = from;
    const to = from + thickness;
    from = to;
    const slab = slabBetween(solid, own, to);
    const bare = layerOutline(solid, own, to, rule, grid, slab);
    const outline = cover === undefined ? bare : meeting(bare, coveredLayer(skin, own, to, cover.mm, grid), grid);
    const isHoled = core !== undefined || dowels !== undefined;
    const sound = !isHoled || rule === 'smaller' ? outline : layerOutline(solid, own, to, 'smaller', grid, slab);
    const hollow = wallMm === undefined ? [] : hollowOf(solid, own, to, wallMm + (cover?.mm ?? 0), openAt, grid);
    return { thickness, from: own, to, slab, outline, sound, hollow };
  });
}

/** Where a core may run: through hollows too, but not out of the side. */
const solidPart = ({ sound }: Draft): readonly Region[] => sound;

function restsOf(
  solid: Solid,
  tree: ReturnType<typeof buildTree>,
  { from, to, slab, outline }: Draft,
  near: readonly FoamSheet[],
  rule: StackRule,
  layerMm3: number,
  boundMm3: number,
  grid: FineGrid,
): Pick<StackLayer, 'sand' | 'fill'> {
  const none = { volumeMm3: 0, boundMm3: 0, depthMm: 0, depthBoundMm: 0 };
  const over = layerMm3 - slab.volumeMm3;
  if (rule === 'larger')
    return {
      sand: { volumeMm3: over, boundMm3, ...sandingDepth(solid, tree, outline, from, to) },
      fill: none,
    };
  if (rule === 'smaller')
    return { sand: none, fill: { volumeMm3: -over, boundMm3, ...fillingDepth(slab, from, near) } };
  const outside = volumeOutside(solid, outline, from, to, grid);
  return {
    sand: {
      volumeMm3: Math.max(0, over + outside.volumeMm3),
      boundMm3: boundMm3 + outside.boundMm3,
      ...sandingDepth(solid, tree, outline, from, to),
    },
    fill: { ...outside, ...fillingDepth(slab, from, near) },
  };
}

function piecesOf(
  number: number,
  foam: readonly Region[],
  next: readonly Region[],
  holes: readonly StackHole[],
  joints: (piece: GluedPiece) => StackPiece['restsOn'],
): readonly StackPiece[] {
  return foam.map((region, k): StackPiece => {
    const own = holes.filter(({ x, y }) => isInRings(ringsOf([region]), x, y));
    const rounds = own.map(({ x, y, radiusMm }) => disc({ x, y }, radiusMm));
    const spot = widestSpot([region.outer, ...region.holes, ...rounds], 0.2);
    const piece = {
      name: foam.length === 1 ? `${number}` : `${number}${letters(k).toLowerCase()}`,
      outer: region.outer,
      openings: region.holes,
      holes: own,
    };
    return {
      ...piece,
      labelAt: { x: spot.x, y: spot.y },
      placing: placingLines(region, next),
      restsOn: joints(piece),
      areaMm2: areaOf([region]) - own.reduce((sum, { radiusMm }) => sum + Math.PI * radiusMm ** 2, 0),
    };
  });
}
