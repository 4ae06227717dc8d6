import { formatMm, formatPlain } from '../base/format-length.ts';
import { buildTree } from '../geom/bvh.ts';
import { composed4, placed4, turned4, undone4 } from '../geom/matrix4.ts';
import type { Ring } from '../geom/ring.ts';
import { add3, cross3, dot3, pointAt3, scale3, sub3, vec3, type Vec3 } from '../geom/vec.ts';
import { triangleNormal } from '../mesh/measure.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { InsertCut, InsertPlan } from '../model/insert.ts';
import type { LetIn } from '../model/let-in.ts';
import type { PlainDraft } from '../model/plain-piece.ts';
import { chainRing } from '../geom/outline.ts';
import type { InsertPart } from '../project/plain-part.ts';
import { cutsOnPiece, hostFindings, type InsertHost, type InsertPlace } from '../steps/inserts/on-piece.ts';
import { poleFindings } from '../steps/inserts/magnet-poles.ts';
import { flatPlace } from '../steps/assembly/on-pieces.ts';
import type { AssemblyLines } from './assembly-lines.ts';
import type { AssemblyPlain, AssemblySculpt, AssemblySheet } from './assembly-parts.ts';

/** Farther than this from the face it is let into, an insert was not put there, mm [J]. */
const OFF_WALL_MM = 5;

/** Something that is let in, as it was planned. */
export interface PlannedInsert {
  readonly part: InsertPart;
  readonly plan: InsertPlan;
}

/** Draws what is cut for all inserts on the pieces they are let into, and tells what stands in their way. */
export function letInAll(
  inserts: readonly PlannedInsert[],
  sculpts: readonly AssemblySculpt[],
  plains: readonly AssemblyPlain[],
  into: AssemblyLines,
): void {
  for (const insert of inserts) {
    const sculpt = sculpts.find(({ part }) => part.id === insert.part.into);
    const plain = plains.find(({ part }) => part.id === insert.part.into);
    if (sculpt !== undefined) letIntoSculpt(insert, sculpt, into);
    else if (plain !== undefined) letIntoPlain(insert, plain, into);
  }
  into.findings.push(...poleFindings(inserts.map(({ part: { id, name, wish } }) => ({ part: id, name, wish }))));
}

function letIntoSculpt(
  { part, plan }: PlannedInsert,
  { part: host, sheets, wallSheets }: AssemblySculpt,
  into: AssemblyLines,
): void {
  const matrix = composed4(undone4(host.transform), part.transform);
  const [at, along] = [placed4(matrix, vec3(0, 0, 0)), turned4(matrix, vec3(1, 0, 0))];
  sheets.slice(0, wallSheets).forEach((sheet, i) => {
    const found = placeOnSheet(sheet, at, along);
    if (found === null) {
      if (i === 0)
        into.tell(
          'warning',
          'insert/no-piece',
          `${part.name} stands at a place of ${host.name} that is no piece yet: lay it flat first, or move it.`,
          part.id,
        );
      return;
    }
    const { piece, place, offMm } = found;
    if (i === 0) {
      if (offMm > OFF_WALL_MM)
        into.tell(
          'warning',
          'insert/off-wall',
          `${part.name} stands ${formatMm(offMm)} off the face of ${host.name}, which it is let into: it is drawn at the nearest place; move it there.`,
          part.id,
          { value: offMm, limit: OFF_WALL_MM, unit: 'mm' },
        );
      tellOfHost({ part, plan }, hostOfPiece(piece), place, into);
    }
    draw(plan.cuts, i + 1, place, part.name, piece.id, into);
  });
}

function letIntoPlain({ part, plan }: PlannedInsert, { part: host, work }: AssemblyPlain, into: AssemblyLines): void {
  const { at } = part;
  const draft = work.pieces.find(({ key }) => key === at?.piece);
  if (at === undefined || draft === undefined) {
    const keys = work.pieces.map(({ key }) => key).join(', ');
    into.tell(
      'warning',
      'insert/no-piece',
      `Say in which piece of ${host.name} ${part.name} is let in, and where: it has ${keys}.`,
      part.id,
    );
    return;
  }
  const place = { x: at.x, y: at.y, turnRad: (at.turnDeg * Math.PI) / 180 };
  tellOfHost({ part, plan }, hostOfDraft(draft), place, into);
  draw(plan.cuts, 1, place, part.name, `${host.id}/${draft.key}`, into);
}

function tellOfHost({ part, plan }: PlannedInsert, host: InsertHost, place: InsertPlace, into: AssemblyLines): void {
  for (const told of hostFindings(plan, host, place)) into.findings.push({ ...told, where: { part: part.id } });
}

const hostOfPiece = ({ name, tracedSide, outline, holes, otherOutline, otherHoles, bend }: FoamPiece): InsertHost => ({
  name,
  rings: tracedSide === 'face' ? [outline, ...holes] : [otherOutline, ...otherHoles],
  leastRadiusMm: bend?.radiusMm ?? null,
});

const hostOfDraft = ({ name, outline, holes, bend }: PlainDraft): InsertHost => ({
  name,
  rings: [outline, ...holes].map((edges): Ring => chainRing(edges.flatMap(({ segments }) => segments))),
  leastRadiusMm: bend.leastRadiusMm ?? null,
});

/** Cuts of one sheet of the wall on one piece of it. A pocket is drawn on the side it is let in from, a hole on both. */
function draw(
  cuts: readonly InsertCut[],
  sheet: number,
  place: InsertPlace,
  name: string,
  piece: string,
  into: AssemblyLines,
): void {
  const own = cutsOnPiece(cuts, place).filter((cut) => cut.sheet === sheet);
  const lines = own.flatMap(({ ring, isThrough, side, depthMm, what }): LetIn[] => {
    const text = isThrough
      ? `${name}: cut its ${what} right through, square`
      : `${name}: ${what} ${formatPlain(depthMm)} mm deep, from the ${side}`;
    const line = { of: name, points: ring, closed: true, text };
    return isThrough
      ? (['face', 'back'] as const).map((one): LetIn => ({ ...line, what: 'hole', side: one }))
      : [{ ...line, what: 'pocket', side }];
  });
  if (lines.length > 0) into.add(new Map([[piece, lines]]));
}

interface OnSheet {
  readonly piece: FoamPiece;
  readonly place: InsertPlace;
  readonly offMm: number;
}

/** The place of a sheet's face nearest to a point as it lies flat, and how a direction lies there. */
function placeOnSheet({ cut, pieces }: AssemblySheet, at: Vec3, along: Vec3): OnSheet | null {
  const { mesh, patches, patchOfTriangle, shell } = cut;
  const positions = shell.facePositions;
  const hit = buildTree(positions, mesh.triangles).nearest(at);
  if (hit === null) return null;
  const patch = patchOfTriangle[hit.triangle];
  const piece = pieces.find((one) => one.patch === patch);
  if (piece === undefined) return null;
  const ground = { patch: patches[patch], uv: piece.uv };
  const triangle = ground.patch.meshTriangles.indexOf(hit.triangle);
  const corners = [0, 1, 2].map((k) => pointAt3(positions, mesh.triangles[3 * hit.triangle + k]));
  const flat = (p: Vec3): readonly [number, number] =>
    flatPlace(ground, {
      triangle,
      weights: weightsOf(corners, triangleNormal(positions, mesh.triangles, hit.triangle), p),
    });
  const [x, y] = flat(hit.point);
  const [x2, y2] = flat(add3(hit.point, along));
  return { piece, place: { x, y, turnRad: Math.atan2(y2 - y, x2 - x) }, offMm: hit.distance };
}

/** Weights of a place in the plane of a triangle; what stands off the plane is let fall on it. */
function weightsOf([a, b, c]: readonly Vec3[], n: Vec3, p: Vec3): readonly [number, number, number] {
  const area = (q: Vec3, r: Vec3, s: Vec3): number => dot3(cross3(sub3(r, q), sub3(s, q)), n);
  const whole = area(a, b, c);
  const onPlane = sub3(p, scale3(n, dot3(sub3(p, a), n)));
  return [area(onPlane, b, c) / whole, area(a, onPlane, c) / whole, area(a, b, onPlane) / whole];
}
