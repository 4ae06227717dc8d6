import type { Finding } from '../../base/finding.ts';
import { letters } from '../../base/ids.ts';
import { ok, type Result } from '../../base/result.ts';
import { buildTree } from '../../geom/bvh.ts';
import { isInRings } from '../../geom/in-rings.ts';
import type { Region } from '../../geom/polygon-boolean.ts';
import { widestSpot } from '../../geom/widest-spot.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { Stack, StackHole, StackLayer, StackPiece, StackRule, StackWish } from '../../model/stack.ts';
import { chooseSheets, HEIGHT_RIGHT_MM } from './choose-sheets.ts';
import { coreHole, type CoreHole } from './core-hole.ts';
import { disc, dowelsInJoints, placeDowels, type DowelPlace } from './dowels.ts';
import { solidInFrame, type Solid } from './frame.ts';
import { hollowOf } from './hollow.ts';
import { layerOutline } from './layer-outline.ts';
import { ORDER_SAMPLES, orderSheets } from './order-sheets.ts';
import { placingLines } from './placing-lines.ts';
import { areaBoundOf, areaOf, fineGrid, ringsOf, without, type FineGrid } from './regions.ts';
import { fillingDepth, sandingDepth, volumeOutside, type FoamSheet } from './rest.ts';
import { sideView } from './side-view.ts';
import { sectionArea, sectionAt, slabBetween, type Slab } from './slab.ts';

/** A layer on its way. */
interface Draft {
  readonly from: number;
  readonly to: number;
  readonly slab: Slab;
  readonly outline: readonly Region[];
  /** What of the layer lies wholly in the solid: where holes cannot come out after sanding. */
  readonly sound: readonly Region[];
  readonly hollow: readonly Region[];
}

/**
 * A closed mesh as layers of sheet.
 * @param mesh  closed, mm, faces outward.
 * @returns fails with `stack/open`, `stack/empty`, `stack/inside-out`, `stack/axis`, `stack/sheets`, `stack/layers` or `stack/too-low`.
 */
export function makeStack(mesh: Mesh, wish: StackWish): Result<Stack> {
  const framed = solidInFrame(mesh, wish.axis);
  if (!framed.ok) return framed;
  const solid = framed.value;
  const { min, max } = solid;
  const heightMm = max.z - min.z;
  const chosen = chooseSheets(heightMm, wish.sheetsMm, wish.rule);
  if (!chosen.ok) return chosen;
  const stackedMm = chosen.value.reduce((sum, one) => sum + one, 0);
  const rest = heightMm - stackedMm;
  const start = wish.seat === 'bottom' ? 0 : wish.seat === 'top' ? rest : rest / 2;
  const grid = fineGrid(Math.max(max.x - min.x, max.y - min.y) + 2);
  const sheets = orderSheets(chosen.value, start, heightMm, areasAlong(solid, new Set(chosen.value).size));
  const drafts = draftsOf(solid, sheets, min.z + start, wish, grid);
  const findings: Finding[] = [];
  const core = wish.core === undefined ? null : coreHole(drafts.map(solidPart), wish.core, grid);
  const cutFree = drafts.map((draft, i) => {
    const sound = without(draft.sound, draft.hollow, grid);
    if (core?.through[i] !== true) return sound;
    return without(sound, [{ outer: disc(core.at, core.radiusMm / Math.cos(Math.PI / 24)), holes: [] }], grid);
  });
  const dowels = wish.dowels === undefined ? [] : placeDowels(cutFree, wish.dowels, grid);
  if (wish.dowels !== undefined) findings.push(...bareJoints(cutFree, dowels, grid));
  findings.push(...bareLayers(drafts, wish), ...coreFindings(core, drafts), ...heightFinding(rest, wish.rule));
  const holesIn = (i: number): readonly StackHole[] => [
    ...(core?.through[i] === true ? [{ kind: 'core' as const, ...core.at, radiusMm: core.radiusMm }] : []),
    ...dowels
      .filter(({ first, last }) => first <= i && i <= last)
      .map(({ at }) => ({
        kind: 'dowel' as const,
        x: at.x,
        y: at.y,
        radiusMm: ((wish.dowels?.diameterMm ?? 0) + (wish.dowels?.clearanceMm ?? 0)) / 2,
      })),
  ];
  const foam = drafts.map(({ outline, hollow }) => (hollow.length === 0 ? outline : without(outline, hollow, grid)));
  const tree = buildTree(solid.surface.positions, solid.surface.triangles);
  const layers = drafts.map((draft, i): StackLayer => {
    const { from, to, slab, outline } = draft;
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
      wish.rule,
      outlineAreaMm2 * (to - from),
      areaBoundMm2 * (to - from),
      grid,
    );
    return {
      number: i + 1,
      thicknessMm: sheets[i],
      fromMm: from,
      toMm: to,
      pieces: piecesOf(i + 1, foam[i], foam[i + 1] === undefined ? [] : drafts[i + 1].outline, holesIn(i)),
      outlineAreaMm2,
      areaBoundMm2,
      solidMm3: slab.volumeMm3,
      ...rests,
    };
  });
  const viewed = drafts.map(({ from, to }, i) => ({ number: i + 1, from, to, regions: foam[i] }));
  const middle = { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2 };
  const inLayers = layers.reduce((sum, { solidMm3 }) => sum + solidMm3, 0);
  return ok({
    frame: solid.frame,
    rule: wish.rule,
    heightMm,
    stackedMm,
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
    findings,
  });
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
  sheets: readonly number[],
  start: number,
  { rule, wallMm, core, dowels }: StackWish,
  grid: FineGrid,
): readonly Draft[] {
  let from = start;
  return sheets.map((thickness) => {
    const own = from;
    const to = from + thickness;
    from = to;
    const slab = slabBetween(solid, own, to);
    const outline = layerOutline(solid, own, to, rule, grid, slab);
    const isHoled = core !== undefined || dowels !== undefined;
    const sound = !isHoled || rule === 'smaller' ? outline : layerOutline(solid, own, to, 'smaller', grid, slab);
    const hollow = wallMm === undefined ? [] : hollowOf(solid, own, to, wallMm, grid);
    return { from: own, to, slab, outline, sound, hollow };
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
): readonly StackPiece[] {
  return foam.map((region, k): StackPiece => {
    const own = holes.filter(({ x, y }) => isInRings(ringsOf([region]), x, y));
    const rounds = own.map(({ x, y, radiusMm }) => disc({ x, y }, radiusMm));
    const spot = widestSpot([region.outer, ...region.holes, ...rounds], 0.2);
    return {
      name: foam.length === 1 ? `${number}` : `${number}${letters(k).toLowerCase()}`,
      outer: region.outer,
      openings: region.holes,
      holes: own,
      labelAt: { x: spot.x, y: spot.y },
      placing: placingLines(region, next),
      areaMm2: areaOf([region]) - own.reduce((sum, { radiusMm }) => sum + Math.PI * radiusMm ** 2, 0),
    };
  });
}

function bareJoints(
  sound: readonly (readonly Region[])[],
  dowels: readonly DowelPlace[],
  grid: FineGrid,
): readonly Finding[] {
  const bare: string[] = [];
  for (let i = 0; i + 1 < sound.length; i += 1) {
    const counts = dowelsInJoints(sound, dowels, i, grid);
    if (counts.length === 0 || counts.some((count) => count < 2)) bare.push(`${i + 1} and ${i + 2}`);
  }
  if (bare.length === 0) return [];
  return [
    {
      code: 'stack/no-dowel-room',
      severity: 'warning',
      text: `There is no room for two dowels in every part where these layers meet: ${bare.join('; ')}. Set them down by the placing lines, or take thinner dowels.`,
      value: bare.length,
      where: {},
    },
  ];
}

function bareLayers(drafts: readonly Draft[], { rule, wallMm }: StackWish): readonly Finding[] {
  const empty = drafts.flatMap(({ outline }, i) => (outline.length === 0 ? [i + 1] : []));
  const whole = drafts.flatMap(({ hollow, outline }, i) => (hollow.length === 0 && outline.length > 0 ? [i + 1] : []));
  return [
    ...(empty.length === 0
      ? []
      : [
          {
            code: 'stack/empty-layer',
            severity: 'warning' as const,
            text: `Nothing is left of ${empty.length === 1 ? 'layer' : 'layers'} ${empty.join(', ')} by the ${rule === 'middle' ? 'middle' : `${rule} face`}: take thinner sheets there, or build it up.`,
            value: empty.length,
            where: {},
          },
        ]),
    ...(wallMm === undefined || whole.length === 0
      ? []
      : [
          {
            code: 'stack/not-hollow',
            severity: 'note' as const,
            text: `No hollow with a wall of ${wallMm} mm fits into ${whole.length === 1 ? 'layer' : 'layers'} ${whole.join(', ')}, so ${whole.length === 1 ? 'it stays' : 'they stay'} whole.`,
            value: whole.length,
            where: {},
          },
        ]),
  ];
}

function coreFindings(core: CoreHole | null, drafts: readonly Draft[]): readonly Finding[] {
  if (core === null) return [];
  const none = drafts.flatMap(({ outline }, i) => (outline.length > 0 && !core.through[i] ? [i + 1] : []));
  if (none.length === 0) return [];
  return [
    {
      code: 'stack/no-core-room',
      severity: 'warning',
      text: `The core has no room in ${none.length === 1 ? 'layer' : 'layers'} ${none.join(', ')}, which ${none.length === 1 ? 'has' : 'have'} no hole for it: end the core there, or move it.`,
      value: none.length,
      where: {},
    },
  ];
}

function heightFinding(rest: number, rule: StackRule): readonly Finding[] {
  if (Math.abs(rest) <= HEIGHT_RIGHT_MM) return [];
  const off = Number(Math.abs(rest).toFixed(2));
  return [
    {
      code: 'stack/height',
      severity: 'warning',
      text:
        rest > 0
          ? `The layers come to ${off} mm less than the solid: fill the rest, or add another thickness of sheet${rule === 'smaller' ? ', or take the larger face' : ''}.`
          : `The layers come to ${off} mm more than the solid: sand the rest off, or add another thickness of sheet.`,
      value: off,
      limit: HEIGHT_RIGHT_MM,
      unit: 'mm',
      where: {},
    },
  ];
}
