import { foamId, layerId, pieceId, type FoamId, type LayerId, type PieceId } from '../../../src/base/ids.ts';
import { STEEP_WAYS } from '../../../src/project/seam-commands.ts';
import type { SeamPath, SurfacePoint } from '../../../src/model/seams.ts';
import type { SeamOfPieces } from '../../../src/model/shop-choices.ts';
import type { SheetName } from '../../../src/model/stock.ts';
import { sculptAtWork } from '../../../src/project/at-work.ts';
import type { EdgePair } from '../../../src/project/commands.ts';
import type { RevisedPiece } from '../../../src/project/done-commands.ts';
import { pathName } from '../../../src/project/path-names.ts';
import type { Project, SculptPart, SourceRef } from '../../../src/project/project.ts';
import type { Dice } from './dice.ts';

/** Corners and polygons of the sculpts that the walk speaks of: few, so that it comes back to them. */
const CORNERS = 24;
const FACES = 16;

export const corner = (dice: Dice): number => dice.whole(CORNERS);
export const face = (dice: Dice): number => dice.whole(FACES);
export const faces = (dice: Dice): number[] => dice.several(5, () => face(dice));
export const edge = (dice: Dice): EdgePair => [corner(dice), corner(dice)];
export const someEdges = (dice: Dice): EdgePair[] => dice.several(5, () => edge(dice));

export const part = (project: Project): SculptPart => {
  const own = sculptAtWork(project);
  if (own === null) throw new Error('the walk has lost its sculpt');
  return own;
};

/** Edges that are seams, mostly, and names of paths. */
export const marked = (project: Project, dice: Dice): EdgePair[] => {
  const { edges, paths } = part(project).seams;
  return dice.several(4, () =>
    paths.length > 0 && dice.chance(0.2) ? pathName(dice.whole(paths.length)) : dice.known(edges, edge(dice)),
  );
};

export const triple = (dice: Dice): [number, number, number] => [dice.mm(-50, 50), dice.mm(-50, 50), dice.mm(1, 50)];

const surfacePoint = (dice: Dice): SurfacePoint =>
  dice.chance(0.5)
    ? { vertex: corner(dice) }
    : { face: face(dice), bary: [dice.between(0, 1), dice.between(0, 1), 0.25] };

export const points = (dice: Dice): readonly SurfacePoint[] => [
  surfacePoint(dice),
  ...dice.several(3, () => surfacePoint(dice)),
];

export const seamPath = (dice: Dice): SeamPath => ({
  points: [surfacePoint(dice), ...points(dice)],
  kind: dice.pick(['butt', 'lap', 'rebate']),
});

export const steep = (dice: Dice) => (dice.chance(0.3) ? { steep: dice.pick(STEEP_WAYS) } : {});

export const foam = ({ foams }: Project, dice: Dice): FoamId => dice.pick(foams).id;
export const anyFoam = (project: Project, dice: Dice): FoamId =>
  dice.known(
    project.foams.map(({ id }) => id),
    foamId('nobody’s'),
  );
export const layer = (project: Project, dice: Dice): LayerId =>
  dice.known(
    part(project).layers.map(({ id }) => id),
    layerId('layer-none'),
  );
export const region = (project: Project, dice: Dice): string =>
  dice.known(
    part(project).regions.map(({ id }) => id),
    'area-none',
  );
export const colour = ({ shop }: Project, dice: Dice): string | null => {
  const known = shop?.colours ?? [];
  return known.length === 0 || dice.chance(0.2) ? null : dice.pick(known).id;
};

/** Names with letters of several alphabets, signs that files and tables take for their own, and none. */
const NAMES = [
  'Helm',
  'Gürtel',
  'rim "A"',
  'a/b\\c',
  '=1+1',
  '\u200f צד',
  'ÅΩ漢',
  ' two  words ',
  '',
  '𝔣oam',
  '__proto__',
  "d'or",
];
export const name = (dice: Dice): string => `${dice.pick(NAMES)}${dice.chance(0.5) ? dice.whole(9) : ''}`;
export const someName = (dice: Dice): string => {
  const own = name(dice);
  return own.trim() === '' ? 'nameless' : own.trim();
};

const PIECES = ['piece-a', 'piece-b', 'piece-c', 'piece-d', 'strip-1'].map(pieceId);
export const piece = (dice: Dice): PieceId => dice.pick(PIECES);
export const revised = (dice: Dice): RevisedPiece => ({ id: piece(dice), revision: `r${dice.whole(5)}` });
export const seamOfPieces = (dice: Dice): SeamOfPieces => ({ pieces: [piece(dice), piece(dice)], nth: dice.whole(3) });

export const sheetName = (project: Project, dice: Dice): SheetName => ({
  stock: dice.known(
    (project.stock?.sheets ?? []).map(({ id }) => id),
    'buy',
  ),
  nth: dice.whole(3),
});

export const held = (project: Project, dice: Dice) => ({
  copy: dice.whole(3),
  sheet: sheetName(project, dice),
  x: dice.mm(0, 900),
  y: dice.mm(0, 900),
  turnRad: dice.between(-3, 3),
  ...(dice.chance(0.3) ? { isFlipped: true } : {}),
});

/** A key that the commands of one drag share: few, so that they meet. */
export const drag = (dice: Dice): string | undefined => (dice.chance(0.5) ? `drag ${dice.whole(3)}` : undefined);

/** A source of the walk's own. */
export const source = (sources: readonly SourceRef[], dice: Dice): SourceRef => dice.pick(sources);
