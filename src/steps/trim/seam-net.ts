import { layLine } from '../../mesh/lines/along-line.ts';
import type { Heading } from '../../mesh/lines/heading.ts';
import type { MeshLine, MeshPoint } from '../../mesh/lines/mesh-line.ts';
import { angleInRound, roundAt } from '../../mesh/lines/round.ts';
import type { Surface } from '../../mesh/surface.ts';
import type { LineNetWish, NetLine, NetTrail } from '../../model/trim.ts';
import { headingFrom } from './line-turning.ts';

/** A line of a net on the surface. */
export interface SurfaceNetLine {
  readonly line: MeshLine;
  readonly isSeen: boolean;
}

/**
 * The net of lines that meet at their ends, with the turns a strip would make from one to another: the angle between them on the surface against half of all
 * there is round the node, so that straight on over a summit or a saddle is 0. Two that lie on surfaces which only touch there turn by half a turn.
 */
export function seamNet(
  surface: Surface,
  lines: readonly SurfaceNetLine[],
  limits: Pick<LineNetWish, 'mostTurnRad' | 'mostLengthMm'>,
): LineNetWish {
  const nodes = new Map<string, number>();
  const nodeOf = (p: MeshPoint): number => {
    const name = JSON.stringify(p);
    const found = nodes.get(name) ?? nodes.size;
    nodes.set(name, found);
    return found;
  };
  const headings: (Heading | null)[] = [];
  const points: MeshPoint[] = [];
  const net = lines.map(({ line, isSeen }): NetLine => {
    const all = line.closed ? [...line.points, line.points[0]] : line.points;
    const [first, last] = [all[0], all[all.length - 1]];
    headings.push(headingFrom(surface, first, all[1]), headingFrom(surface, last, all[all.length - 2]));
    points.push(first, last);
    return { from: nodeOf(first), to: nodeOf(last), lengthMm: layLine(surface, line).lengthMm, isSeen };
  });
  const turn = (end: number, other: number): number => {
    const [a, b] = [headings[end], headings[other]];
    if (a === null || b === null) return Math.PI;
    const round = roundAt(surface, points[end], a.triangle);
    if (!round.parts.some(({ triangle }) => triangle === b.triangle)) return Math.PI;
    const apart = Math.abs(angleInRound(round, a) - angleInRound(round, b));
    if (round.isOpen) return Math.abs(Math.PI - apart);
    return Math.abs(Math.PI - (2 * Math.PI * apart) / round.total);
  };
  return { nodeCount: nodes.size, lines: net, turn, ...limits };
}

/** The line under one run of a net. */
export function lineOfTrail(lines: readonly SurfaceNetLine[], { lines: run, closed }: NetTrail): MeshLine {
  const points: MeshPoint[] = [];
  for (const { line, isReversed } of run) {
    const own = lines[line].line;
    const all = own.closed ? [...own.points, own.points[0]] : own.points;
    const ordered = isReversed ? [...all].reverse() : all;
    for (let i = points.length === 0 ? 0 : 1; i < ordered.length; i += 1) points.push(ordered[i]);
  }
  if (closed) points.pop();
  return { points, closed };
}
