import type { FoamId } from '../base/ids.ts';
import type { Matrix4 } from '../geom/matrix4.ts';
import { GOLDEN_TURN_DEG, USUAL_WEIGHTS, type ProfileCorner, type WindingWish } from '../model/build-up.ts';
import type { NewPlain } from './plain-commands.ts';

/** Room between core and what slides on it, mm, where nothing else is said. */
export const USUAL_ROOM_MM = 0.3;

/** Thin foam or leather as it is wound on a grip, mm. */
export const USUAL_WOUND_MM = 2;

/** A handle on the pipe that most handles stand on [J]; mm. */
const FIRST_CORE = { pipe: 'PVC 32', material: 'pvc', diameterMm: 32, overallMm: 900 } as const;
const FIRST_PROFILE: readonly ProfileCorner[] = [
  { atMm: 0, radiusMm: 26 },
  { atMm: 300, radiusMm: 22 },
];
const FIRST_STRIP_MM = 25;

/** A core with a plain handle built up on it, in sheets of its foams. */
export const newCore = (name: string, foams: readonly FoamId[], transform: Matrix4): NewPlain => ({
  kind: 'build-up',
  name,
  transform,
  copies: 1,
  foams,
  wish: {
    core: { ...FIRST_CORE, glueRoomMm: USUAL_ROOM_MM, places: [] },
    profile: FIRST_PROFILE,
    rule: 'sand',
    weights: USUAL_WEIGHTS,
    seamTurnDeg: GOLDEN_TURN_DEG,
    staves: [],
    windings: [],
  },
});

/** A strip wound edge to edge over all of a profile; with none, over all of the core. */
export const newWinding = (profile: readonly ProfileCorner[], overallMm: number): WindingWish => ({
  fromMm: profile.at(0)?.atMm ?? 0,
  toMm: profile.at(-1)?.atMm ?? overallMm,
  widthMm: FIRST_STRIP_MM,
  thicknessMm: USUAL_WOUND_MM,
  neutralFraction: 0.5,
  by: { pitchMm: FIRST_STRIP_MM },
  keep: 'pitch',
  starts: 1,
  hand: 'right',
  cut: 'straight',
  crossed: false,
});

/** Strips wound over all of one profile, over all of another; those that are wound over a stretch of it stay. */
export const woundOver = (
  windings: readonly WindingWish[],
  before: readonly ProfileCorner[],
  profile: readonly ProfileCorner[],
): readonly WindingWish[] =>
  windings.map((winding) => ({
    ...winding,
    ...(profile.length > 0 && winding.fromMm === before.at(0)?.atMm ? { fromMm: profile[0].atMm } : {}),
    ...(profile.length > 0 && winding.toMm === before.at(-1)?.atMm ? { toMm: profile[profile.length - 1].atMm } : {}),
  }));
