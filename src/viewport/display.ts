import { type Box3, type Matrix4, Quaternion, Vector3 } from 'three';
import type { Work } from '../base/work.ts';
import type { SurfaceTree } from '../geom/bvh.ts';
import type { PiecesView, SculptView, SeamsView, ShellView } from '../model/bench-view.ts';
import type { SheetLayout } from '../model/sheet.ts';
import type { UpAxis } from './bench-contract.ts';
import type { CornerSurface } from './corner-surface.ts';
import { buildFoam, inScene } from './foam-build.ts';
import type { FoamBody } from './foam-body.ts';
import { APART_SHARE, apartArrow, type Journey } from './journey.ts';
import { placePieces, type PiecePlaces } from './piece-places.ts';
import type { FormView } from './plain-forms.ts';
import { buildForm, sculptGroups } from './sculpt-form.ts';
import { indexSculpt, type SculptIndex } from './sculpt-index.ts';
import type { ShadingGroups } from './shading-groups.ts';
import { lowestOf, standOnBench } from './standing.ts';
import { surfaceLines, type SurfaceLines } from './surface-lines.ts';
import { placesBy } from './taken-apart.ts';

/** The records on show. */
export interface Shown {
  readonly sculpt: SculptView | null;
  readonly shell: ShellView | null;
  readonly seams: SeamsView | null;
  readonly pieces: PiecesView | null;
  readonly sheets: SheetLayout | null;
  /** Parts that no sculpt is parted for, and sculpts that are not worked on. */
  readonly plain: readonly FormView[];
}

/** What depends on the sculpt alone. */
export interface SculptDisplay {
  readonly sculpt: SculptView;
  readonly index: SculptIndex;
  /** Null until there is one: then nothing of it can be picked yet. */
  readonly tree: SurfaceTree | null;
  readonly groups: ShadingGroups;
}

/** Solid things made from the records. */
export interface SolidDisplay {
  readonly base: SculptDisplay;
  readonly shell: ShellView | null;
  readonly seams: SeamsView | null;
  readonly pieces: PiecesView | null;
  readonly sceneFromModel: Matrix4;
  /** Of the sculpt with its foam, in the scene. */
  readonly box: Box3;
  readonly form: CornerSurface;
  readonly body: FoamBody | null;
  readonly lines: SurfaceLines;
  readonly localOfTriangle: Uint32Array | null;
  /** How far down it reaches, and it or what stands with it, model space with its up upward. */
  readonly lowest: number;
  readonly floor: number;
}

/** Finished forms of the parts that stand with a sculpt, model space; none while its size is not known. */
export const formsBeside = ({ sculpt, plain }: Shown): readonly Float32Array[] =>
  sculpt?.sized === true ? formsOf(plain) : [];

/** Forms of the parts that have one. */
export const formsOf = (plain: readonly FormView[]): readonly Float32Array[] =>
  plain.flatMap(({ form }) => (form === null || form.length === 0 ? [] : [form]));

async function buildSculpt(sculpt: SculptView, work: Work): Promise<SculptDisplay> {
  const index = await indexSculpt(sculpt, work);
  const groups = await sculptGroups(sculpt.positions, sculpt.triangles, index, work);
  return { sculpt, index, tree: await treeOf(sculpt), groups };
}

/** @param known  what was made before, taken over where it is of the same surface. */
export async function displayOf(sculpt: SculptView, known: SculptDisplay | null, work: Work): Promise<SculptDisplay> {
  const before = known?.sculpt;
  if (known === null || before?.positions !== sculpt.positions || before.triangles !== sculpt.triangles)
    return await buildSculpt(sculpt, work);
  return before === sculpt ? known : { ...known, sculpt, tree: await treeOf(sculpt) };
}

/** The code of trees is not loaded before there is one. */
async function treeOf({ bvh, positions, triangles }: SculptView): Promise<SurfaceTree | null> {
  if (bvh === null) return null;
  const { treeFromSerialised } = await import('../geom/bvh.ts');
  return treeFromSerialised(positions, triangles, bvh);
}

export async function buildSolid(base: SculptDisplay, shown: Shown, up: UpAxis, work: Work): Promise<SolidDisplay> {
  const { sculpt, index } = base;
  const count = sculpt.positions.length;
  // Records of one update belong together; a shell or pieces of another sculpt are on their way out.
  const shell = shown.shell !== null && shown.shell.facePositions.length === count ? shown.shell : null;
  const pieces =
    shown.pieces !== null && 3 * shown.pieces.patchOfTriangle.length === sculpt.triangles.length ? shown.pieces : null;
  const seams =
    shown.seams !== null && 2 * shown.seams.chainOfEdge.length === sculpt.edgeVertices.length ? shown.seams : null;
  const beside = formsBeside(shown);
  const skins = shell === null ? [sculpt.positions] : [shell.facePositions, shell.backPositions];
  const { matrix, box } = standOnBench(skins, up, sculpt.sized, beside);
  const lowest = lowestOf(skins, up);
  const formPoints = inScene(shell === null ? sculpt.positions : shell.backPositions, matrix);
  const form = await buildForm(formPoints, sculpt.triangles, base.groups, work);
  const body = shell === null ? null : await buildFoam(sculpt, index, shell, pieces, matrix, work);
  await work.pause(0);
  return {
    base,
    shell,
    seams,
    pieces,
    sceneFromModel: matrix,
    box,
    form,
    body,
    lines: surfaceLines(sculpt, index, seams),
    localOfTriangle: pieces === null ? null : localTriangles(pieces),
    lowest,
    floor: Math.min(lowest, lowestOf(beside, up)),
  };
}

function localTriangles(pieces: PiecesView): Uint32Array {
  const local = new Uint32Array(pieces.patchOfTriangle.length);
  for (const { meshTriangles } of pieces.patches) {
    for (let i = 0; i < meshTriangles.length; i += 1) local[meshTriangles[i]] = i;
  }
  return local;
}

/** Height of flat pieces over their places: a share of the sculpt's height, at least so many mm. */
const LIFT_SHARE = 0.28;
const LEAST_LIFT = 30;

/**
 * Sheets, places and journeys for what is on show.
 * @param beside  round what stands on the bench besides.
 * @param glued   by piece, the lower the earlier it is glued; empty where that is not known: then by their numbers.
 */
export function arrange(
  solid: SolidDisplay,
  sheets: SheetLayout | null,
  beside: Box3,
  glued: readonly number[],
): { readonly places: PiecePlaces; readonly journeys: readonly Journey[]; readonly lift: number } {
  const size = solid.box.getSize(new Vector3());
  const places = placePieces(footprintOf(solid.box.clone().union(beside)), solid.pieces, sheets);
  const middle = solid.box.getCenter(new Vector3());
  const lift = Math.max(LEAST_LIFT, LIFT_SHARE * size.y);
  const patches = solid.body?.patches ?? [];
  const order = placesBy(patches.map(({ shape }) => glued[shape.piece] ?? shape.piece));
  const journeys = patches.map((patch, i): Journey => {
    const { piece } = patch.shape;
    const apart =
      solid.pieces === null
        ? new Vector3()
        : apartArrow(patch.normal, patch.centre, middle, APART_SHARE * size.length());
    const sculpt = {
      sculptCentre: patch.centre,
      sculptTurn: patch.shapeTurn,
      apart,
      glued: { place: order[i], of: patches.length },
      lift,
    };
    const drawing = places.sceneFromDrawing[piece];
    const flat = places.drawingFromFlat[piece];
    if (drawing === undefined || flat === undefined || !patch.canRoll) {
      return { ...sculpt, benchCentre: patch.centre, benchTurn: patch.shapeTurn, turnTaken: 0 };
    }
    const sceneFromFlat = drawing.clone().multiply(flat);
    return {
      ...sculpt,
      benchCentre: patch.flatCentre.clone().applyMatrix4(sceneFromFlat),
      benchTurn: new Quaternion().setFromRotationMatrix(sceneFromFlat),
      turnTaken: patches.length < 2 ? 0 : piece / (patches.length - 1),
    };
  });
  return { places, journeys, lift };
}

/** Width and depth of bench that things take, the same on both sides of its middle, where the sculpt stands. */
export const footprintOf = ({ min, max }: Box3): { readonly width: number; readonly depth: number } => ({
  width: 2 * Math.max(Math.abs(min.x), Math.abs(max.x)),
  depth: 2 * Math.max(Math.abs(min.z), Math.abs(max.z)),
});
