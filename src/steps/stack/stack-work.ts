import { arc, chainRound, type OutlineSegment } from '../../geom/outline.ts';
import { depthInside } from '../../geom/widest-spot.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { squareEdge } from '../../model/plain-edge.ts';
import type { PlainDraft, PlainLine, PlainStep, PlainWork } from '../../model/plain-piece.ts';
import type { ShapeEdge } from '../../model/shape.ts';
import type { Stack, StackHole, StackLayer, StackPiece } from '../../model/stack.ts';
import { areAlike } from './same-pieces.ts';
import { stackSteps } from './stack-steps.ts';
import { steppedMesh } from './stepped-mesh.ts';

/** Up arrows are so long where there is room, mm; shorter ones keep to half the room, and none is drawn under the least. */
const ARROW_MM = 10;
const LEAST_ARROW_MM = 2;

/** Layers that are cut and marked alike, and how many there are. */
interface LikePieces {
  readonly piece: StackPiece;
  readonly layer: StackLayer;
  readonly names: readonly string[];
}

/**
 * What a stack is cut from and how it is put together. Pieces of one thickness that are cut and marked alike, as along a prism, are one piece so
 * many times over; a piece whose next layer is set down elsewhere is another.
 * @param solid  what it is once it is sanded and filled, mm, in the frame of the model; left out, the form is the stack with its steps.
 */
export function stackWork(stack: Stack, solid?: Mesh): PlainWork {
  const groups = likePieces(stack);
  const keys = new Map(groups.flatMap(({ names }) => names.map((name) => [name, keyOf(names[0])] as const)));
  return {
    pieces: groups.map((group) => draftOf(group, stack.layers.length)),
    steps: stackSteps(stack, (name): string => keys.get(name) ?? keyOf(name)) satisfies readonly PlainStep[],
    findings: stack.findings,
    form: solid ?? steppedMesh(stack),
  };
}

const keyOf = (name: string): string => `layer-${name}`;

function likePieces({ layers }: Stack): readonly LikePieces[] {
  const groups: { piece: StackPiece; layer: StackLayer; names: string[] }[] = [];
  for (const layer of layers) {
    for (const piece of layer.pieces) {
      const known = groups.find(
        (group) => group.layer.thicknessMm === layer.thicknessMm && areAlike(group.piece, piece),
      );
      if (known === undefined) groups.push({ piece, layer, names: [piece.name] });
      else known.names.push(piece.name);
    }
  }
  return groups;
}

function draftOf({ piece, layer, names }: LikePieces, layerCount: number): PlainDraft {
  const { outer, openings, holes, areaMm2 } = piece;
  const [what, which] = names.length === 1 ? ['layer', piece.name] : ['layers', names.join(', ')];
  return {
    key: keyOf(names[0]),
    name: names.length > 3 ? `layers ${names[0]} to ${names[names.length - 1]}` : `${what} ${which}`,
    quantity: names.length,
    thicknessMm: layer.thicknessMm,
    drawnAt: 1,
    outline: [squareEdge('outline', chainRound(outer))],
    holes: [
      ...openings.map((ring): readonly ShapeEdge[] => [squareEdge('opening', chainRound(ring))]),
      ...holes.map((hole): readonly ShapeEdge[] => [squareEdge(`${hole.kind} hole`, roundHole(hole))]),
    ],
    bend: { kind: 'flat' },
    lines: [
      ...piece.placing.map((points): PlainLine => placingLine(points)),
      ...upMark(piece, names.length === 1 ? piece.name : `${names.length}×`),
    ],
    notes: notesOf(piece, layer, names, layerCount),
    areaMm2,
  };
}

/** Clockwise round a hole, exact. */
const roundHole = ({ x, y, radiusMm }: StackHole): readonly OutlineSegment[] => [
  arc({ x, y }, radiusMm, 0, -Math.PI),
  arc({ x, y }, radiusMm, -Math.PI, -Math.PI),
];

/** A line that comes back to its first corner is closed. */
function placingLine(points: Float64Array): PlainLine {
  const n = points.length;
  const closed = n > 4 && points[0] === points[n - 2] && points[1] === points[n - 1];
  return { role: 'placement', points: closed ? points.slice(0, n - 2) : points, closed };
}

/** An arrow to y of the frame where the piece has most room, with its number. */
function upMark({ outer, openings, holes, labelAt: { x, y } }: StackPiece, text: string): readonly PlainLine[] {
  const room = Math.min(
    depthInside([outer, ...openings], x, y),
    ...holes.map((hole) => Math.hypot(hole.x - x, hole.y - y) - hole.radiusMm),
  );
  const long = Math.min(ARROW_MM, room);
  if (!(long >= LEAST_ARROW_MM)) return [];
  const [half, head] = [long / 2, long / 4];
  return [
    { role: 'mark', points: Float64Array.from([x, y - half, x, y + half]), closed: false, text },
    {
      role: 'mark',
      points: Float64Array.from([x - head, y + half - head, x, y + half, x + head, y + half - head]),
      closed: false,
    },
  ];
}

function notesOf(
  { restsOn, holes }: StackPiece,
  { thicknessMm, sand, fill }: StackLayer,
  names: readonly string[],
  layerCount: number,
): readonly string[] {
  const notes = [
    names.length === 1
      ? `Layer ${names[0]} of ${layerCount}, ${short(thicknessMm)} mm.`
      : `${names.length} alike, layers ${names.join(', ')} of ${layerCount}, ${short(thicknessMm)} mm each.`,
    'Arrow: up mark, the same way in every layer.',
  ];
  if (names.length === 1 && restsOn.length > 0) notes.push(`On ${restsOn.map(({ name }) => name).join(', ')}.`);
  if (sand.depthMm > 0.05) notes.push(`Sand off up to ${(sand.depthMm + sand.depthBoundMm).toFixed(1)} mm.`);
  if (fill.depthMm > 0.05) notes.push(`Fill up to ${(fill.depthMm + fill.depthBoundMm).toFixed(1)} mm.`);
  const bore = holes.map(({ kind, radiusMm }) => `${kind} ${short(2 * radiusMm)}`);
  if (bore.length > 0) notes.push(`Holes, mm across: ${[...new Set(bore)].join(', ')}.`);
  return notes;
}

const short = (mm: number): string => String(Number(mm.toFixed(2)) + 0);
