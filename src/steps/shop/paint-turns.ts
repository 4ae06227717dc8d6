import { DisjointSets } from '../../base/disjoint-sets.ts';
import type { PaintSkin } from './paint-skin.ts';

/** Areas of one colour that are painted in one go. */
export interface PaintTurn {
  readonly colour: number;
  readonly triangles: readonly number[];
  /** Border with what is painted already and has another colour, edge by edge: tape is laid along it. */
  readonly tape: readonly TapedEdge[];
}

export interface TapedEdge {
  readonly mm: number;
  /** Triangle that is painted in this turn, and the colour the tape lies on; -1 where that has none of its own. */
  readonly beside: number;
  readonly on: number;
}

/** What of a skin is painted now. */
export interface TurnJob {
  readonly skin: PaintSkin;
  /** Per triangle 1 where it is painted now, and 1 where that is done already. */
  readonly isNow: Uint8Array;
  readonly isDone: Uint8Array;
  /** Index of the colour of the rest; -1 where there is none. */
  readonly base: number;
  /** Per colour, 0 to 1. */
  readonly lightness: readonly number[];
}

/** Areas of the same colour that hang together and are all painted now, or all not. */
interface Field {
  readonly colour: number;
  readonly areaMm2: number;
  readonly triangles: readonly number[];
  readonly isNow: boolean;
  /** Fields it borders on, ascending. */
  readonly beside: readonly number[];
}

/**
 * The order of masking, by common practice [J]: the base colour first; then the larger areas; what lies wholly within another after it; of areas
 * alike the lighter colour first. Areas of one colour are painted in one go where that breaks nothing of this. Each is bounded by tape along its
 * border with all that was painted before, so every border is taped once. What has no colour of its own was coated before.
 */
export function paintTurns(job: TurnJob): readonly PaintTurn[] {
  const { skin, base } = job;
  const fields = fieldsOf(job);
  const round = enclosing(fields, base);
  const isPainted = Uint8Array.from(fields, ({ isNow }) => (isNow ? 0 : 1));
  const done = Uint8Array.from(skin.colourOf, (colour, t) => (colour < 0 || job.isDone[t] === 1 ? 1 : 0));
  const turns: PaintTurn[] = [];
  while (isPainted.includes(0)) {
    const due = fields.flatMap((_, f) => (isPainted[f] === 0 ? [f] : []));
    const ready = due.filter((f) => fields[f].colour === base || round[f].every((g) => isPainted[g] === 1));
    const turn = nextTurn(fields, due, ready, job);
    turns.push(turnOf(fields, turn, skin, done));
    for (const f of turn) {
      isPainted[f] = 1;
      for (const t of fields[f].triangles) done[t] = 1;
    }
  }
  return turns;
}

function fieldsOf({ skin: { areaMm2, colourOf, edges }, isNow }: TurnJob): readonly Field[] {
  const sets = new DisjointSets(areaMm2.length);
  const stateOf = (t: number): boolean => isNow[t] === 1 && colourOf[t] >= 0;
  const areAlike = (a: number, b: number): boolean => colourOf[a] === colourOf[b] && stateOf(a) === stateOf(b);
  for (const { a, b } of edges) if (areAlike(a, b)) sets.join(a, b);
  const fieldOf = new Map<number, number>();
  const triangles: number[][] = [];
  for (let t = 0; t < areaMm2.length; t += 1) {
    const root = sets.find(t);
    const known = fieldOf.get(root);
    if (known !== undefined) triangles[known].push(t);
    else fieldOf.set(root, triangles.push([t]) - 1);
  }
  const beside = triangles.map(() => new Set<number>());
  for (const { a, b } of edges) {
    const [f, g] = [a, b].map((t) => fieldOf.get(sets.find(t)) ?? 0);
    if (f === g) continue;
    beside[f].add(g);
    beside[g].add(f);
  }
  return triangles.map((own, f) => ({
    colour: colourOf[own[0]],
    areaMm2: own.reduce((sum, t) => sum + areaMm2[t], 0),
    triangles: own,
    isNow: stateOf(own[0]),
    beside: [...beside[f]].sort((p, q) => p - q),
  }));
}

/**
 * For each field those that lie all round it: every way to it from the ground goes through them. The ground is the largest field of the base colour,
 * or of the rest; where neither hangs together with it, the largest there is.
 */
function enclosing(fields: readonly Field[], base: number): readonly (readonly number[])[] {
  const round: number[][] = fields.map(() => []);
  const rank = ({ colour }: Field): number => (colour === base || colour < 0 ? 0 : 1);
  const order = fields
    .map((_, f) => f)
    .sort((f, g) => rank(fields[f]) - rank(fields[g]) || fields[g].areaMm2 - fields[f].areaMm2 || f - g);
  const isKnown = new Uint8Array(fields.length);
  for (const ground of order) {
    if (isKnown[ground] === 1) continue;
    const together = reachedFrom(fields, ground, -1);
    for (const f of together) isKnown[f] = 1;
    for (const g of together.length > MOST_NESTED ? [] : together) {
      if (g === ground || fields[g].beside.length < 2) continue;
      const open = new Set(reachedFrom(fields, ground, g));
      for (const f of together) if (f !== g && !open.has(f)) round[f].push(g);
    }
    for (const f of together) if (f !== ground) round[f].push(ground);
  }
  return round;
}

/** Of more fields than this that hang together it is not asked which lies within which: they follow by size alone. */
const MOST_NESTED = 400;

/** Fields that hang together with one of them when another is taken away. */
function reachedFrom(fields: readonly Field[], from: number, without: number): readonly number[] {
  const seen = new Set([from]);
  for (const f of seen) for (const g of fields[f].beside) if (g !== without) seen.add(g);
  return [...seen];
}

/** Fields of one colour that are painted next. */
function nextTurn(
  fields: readonly Field[],
  due: readonly number[],
  ready: readonly number[],
  { base, lightness }: TurnJob,
): readonly number[] {
  const colours = [...new Set(ready.map((f) => fields[f].colour))];
  const ofColour = (list: readonly number[], colour: number) => list.filter((f) => fields[f].colour === colour);
  const candidates = colours.map((colour) => {
    const own = ofColour(ready, colour);
    return {
      own,
      colour,
      // The base before all else, and then what need not be taken up again.
      rank: colour === base ? 0 : own.length === ofColour(due, colour).length ? 1 : 2,
      areaMm2: own.reduce((sum, f) => sum + fields[f].areaMm2, 0),
    };
  });
  candidates.sort(
    (p, q) =>
      p.rank - q.rank || q.areaMm2 - p.areaMm2 || lightness[q.colour] - lightness[p.colour] || p.colour - q.colour,
  );
  return candidates[0].own;
}

function turnOf(fields: readonly Field[], turn: readonly number[], skin: PaintSkin, done: Uint8Array): PaintTurn {
  const { colour } = fields[turn[0]];
  const triangles = turn.flatMap((f) => fields[f].triangles).sort((a, b) => a - b);
  const own = new Set(triangles);
  const tape = skin.edges.flatMap(({ a, b, mm }): TapedEdge[] => {
    const beside = own.has(a) ? a : own.has(b) ? b : -1;
    if (beside < 0) return [];
    const other = beside === a ? b : a;
    const on = skin.colourOf[other];
    return done[other] === 1 && on !== colour ? [{ mm, beside, on }] : [];
  });
  return { colour, triangles, tape };
}
