import { formatLength, type LengthUnit } from '../base/format-length.ts';
import { FELT_STEP_MM } from '../base/tolerance.ts';
import type { FoamSeam } from '../model/foam-piece.ts';
import type { PathSide, SeamChain } from '../model/seams.ts';
import type { SteepWay } from '../model/steep-join.ts';
import { setSeamJoin, STEEP_WAYS, type JoinWish } from '../project/seam-commands.ts';
import { chainIndex, pieceIndex, type Bench } from './bench-state.ts';
import { edgeIndexOf } from './edge-index.ts';
import type { Verb } from './verb.ts';
import { facesOfPatch, pairsOfSeam } from './wish-actions.ts';
import type { Workbench } from './workbench.ts';
import { WORDS } from './words.ts';

/** Width a lap begins with, mm. */
const LAP_MM = 10;

/** How the two sides of a seam are to meet; a side is 0 or 1. */
export type SeamJoin =
  | { readonly kind: 'butt'; readonly steep?: SteepWay }
  | { readonly kind: 'lap'; readonly allowanceMm: number; readonly lapSide: 0 | 1; readonly isUnder: boolean }
  | { readonly kind: 'rebate'; readonly standSide?: 0 | 1 };

/** Joins the chosen seam otherwise. */
export function joinChosenAs(bench: Workbench, join: SeamJoin): void {
  const { choice } = bench.view;
  if (choice.kind !== 'seam') return;
  bench.run(setSeamJoin(pairsOfSeam(bench.bench, choice.seam), settingOf(bench.bench, choice.seam, join)));
}

/** Takes another width for the lap of the chosen seam. */
export function widenChosenLap(bench: Workbench, allowanceMm: number): void {
  const { choice } = bench.view;
  const chain = choice.kind === 'seam' ? bench.bench.seams?.chains[chainIndex(bench.bench, choice.seam)] : undefined;
  if (chain !== undefined) joinChosenAs(bench, { ...lapOf(chain), allowanceMm });
}

function settingOf(bench: Bench, seam: string, join: SeamJoin): JoinWish {
  const faceOn = (side: 0 | 1) => faceOnSide(bench, seam, side);
  const way = pathWay(bench, seam);
  // Side 0 lies to the left of the seam, which may run against its path.
  const onPath = (side: 0 | 1): PathSide => ((side === 0) === way > 0 ? 'left' : 'right');
  switch (join.kind) {
    case 'butt':
      return { kind: 'butt', allowanceMm: 0, ...(join.steep === undefined ? {} : { steep: join.steep }) };
    case 'lap': {
      const lapFace = faceOn(join.lapSide);
      const { allowanceMm } = join;
      return {
        kind: 'lap',
        allowanceMm,
        ...(lapFace === undefined ? {} : { lapFace }),
        ...(way === 0 ? {} : { lapSide: onPath(join.lapSide) }),
        ...(join.isUnder ? { lapUnder: true } : {}),
      };
    }
    case 'rebate': {
      const standFace = join.standSide === undefined ? undefined : faceOn(join.standSide);
      return {
        kind: 'rebate',
        allowanceMm: 0,
        ...(standFace === undefined ? {} : { standFace }),
        ...(way === 0 || join.standSide === undefined ? {} : { standSide: onPath(join.standSide) }),
      };
    }
  }
}

/** 1 where the path that a seam runs along runs the same way, -1 where it runs against it, 0 where it runs along no path. */
function pathWay({ sculpt, seams }: Bench, seam: string): number {
  const chain = seams?.chains.find(({ id }) => id === seam);
  if (sculpt?.edgePathWay === undefined || chain === undefined) return 0;
  const [from, to] = chain.vertices;
  const edge = edgeIndexOf(sculpt).between(from, to);
  const way = edge < 0 ? 0 : sculpt.edgePathWay[edge];
  return sculpt.edgeVertices[2 * edge] === from ? way : -way;
}

/** A polygon of the sculpt in the piece on one side of a seam. */
function faceOnSide(bench: Bench, seam: string, side: 0 | 1): number | undefined {
  const patch = bench.seams?.chains.find(({ id }) => id === seam)?.sides[side]?.patch;
  return patch === undefined ? undefined : facesOfPatch(bench, patch)[0];
}

const otherSide = (side: 0 | 1): 0 | 1 => (side === 0 ? 1 : 0);

/** A lap as a seam has it, or as it would begin. */
function lapOf({ kind, allowanceMm, lapSide, topSide = lapSide }: SeamChain): SeamJoin & { kind: 'lap' } {
  const isLap = kind === 'lap';
  return {
    kind: 'lap',
    allowanceMm: isLap && allowanceMm > 0 ? allowanceMm : LAP_MM,
    lapSide,
    isUnder: isLap && topSide !== lapSide,
  };
}

/** What can be done with how a seam is joined. */
export function seamJoinVerbs(bench: Workbench, chain: SeamChain): Verb[] {
  const words = WORDS.joins.verbs;
  const lap = lapOf(chain);
  const verb = (id: string, label: string, key: string, join: SeamJoin): Verb => ({
    id,
    label,
    key,
    isNear: true,
    run: () => joinChosenAs(bench, join),
  });
  const butt = verb('butt', words.butt, 'b', { kind: 'butt' });
  const toLap = verb('lap', words.lap(formatLength(lap.allowanceMm, 'mm')), 'l', lap);
  const rebate = verb('rebate', words.rebate, 'd', { kind: 'rebate' });
  switch (chain.kind) {
    case 'lap':
      return [
        butt,
        verb('other-lap', words.otherLap, 'l', { ...lap, lapSide: otherSide(lap.lapSide) }),
        verb('lap-under', lap.isUnder ? words.over : words.under, 'u', { ...lap, isUnder: !lap.isUnder }),
        rebate,
      ];
    case 'rebate':
      return [
        butt,
        verb('other-stands', words.otherStands, 'd', { kind: 'rebate', standSide: otherSide(chain.standSide ?? 0) }),
        toLap,
      ];
    default:
      return [toLap, rebate, ...steepVerbs(bench.bench, chain, verb)];
  }
}

/** Ways to build a butt seam whose fold is beyond the blade; none elsewhere. */
function steepVerbs(
  { findings }: Bench,
  { id, steep }: SeamChain,
  verb: (id: string, label: string, key: string, join: SeamJoin) => Verb,
): readonly Verb[] {
  const isTold = findings.some(({ code, where }) => code === 'foam/bevel-steep' && where.seam === id);
  if (!isTold && steep === undefined) return [];
  const words = WORDS.joins.steep;
  const ways = STEEP_WAYS.filter((way) => way !== steep).map((way) =>
    verb(`steep-${way}`, words[way], STEEP_KEYS[way], { kind: 'butt', steep: way }),
  );
  return steep === undefined ? ways : [verb('butt', words.asItFolds, 'b', { kind: 'butt' }), ...ways];
}

const STEEP_KEYS: Readonly<Record<SteepWay, string>> = { split: 's', fill: 'f', trim: 'm' };

/** How the sides of a seam meet, where that is not edge to edge with their surfaces running on: `3 lies over 4, step of 6 mm on the face`. */
export function joinFacts(bench: Bench, seam: FoamSeam, unit: LengthUnit): readonly string[] {
  const words = WORDS.joins;
  const number = (side: number): number => bench.pieces?.pieces[pieceIndex(bench, seam.pieces[side])]?.number ?? 0;
  const { topSide, standSide, step } = seam;
  return [
    ...(topSide === undefined ? [] : [words.liesOver(number(topSide), number(1 - topSide))]),
    ...(standSide === undefined ? [] : [words.standsOn(number(standSide), number(1 - standSide))]),
    ...(step === undefined ? [] : [stepText(step, unit)]),
  ];
}

function stepText({ faceMm, backMm }: NonNullable<FoamSeam['step']>, unit: LengthUnit): string {
  const words = WORDS.joins;
  const sides = [
    ...(faceMm < FELT_STEP_MM ? [] : [words.onFace(formatLength(faceMm, unit))]),
    ...(backMm < FELT_STEP_MM ? [] : [words.onBack(formatLength(backMm, unit))]),
  ];
  return words.step(sides);
}
