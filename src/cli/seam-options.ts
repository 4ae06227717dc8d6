import type { ScoredLine } from '../model/score.ts';
import type { SeamChain } from '../model/seams.ts';
import type { SteepWay } from '../model/steep-join.ts';
import type { Outcome } from '../pipeline/outcome.ts';
import { namesOfOrder } from '../pipeline/shop-order.ts';
import type { Command, EdgePair } from '../project/commands.ts';
import { CLAY_MOST_MM } from '../project/clay-limits.ts';
import { setFillet } from '../project/finish-commands.ts';
import { FIRST_SCORE, scoreSeam } from '../project/score-commands.ts';
import { setSeamJoin, STEEP_WAYS } from '../project/seam-commands.ts';
import { Refused, WrongUsage } from './exit.ts';
import { decimal, given, oneOf } from './option-values.ts';

/** What is wanted of seams that are named by the letters they are printed with. */
export interface SeamWishes {
  readonly steep?: readonly { readonly letter: string; readonly way: SteepWay }[];
  readonly scores?: readonly ({ readonly letter: string } & Pick<ScoredLine, 'depthMm' | 'openMm'>)[];
  /** Filled with clay to a hollow of this radius; 0: not. */
  readonly fillets?: readonly { readonly letter: string; readonly radiusMm: number }[];
}

/** Deepest and widest slit taken, mm: no foam is thicker. */
const MOST_SCORE_MM = 200;

/** `--steep LETTER=WAY`, `--score LETTER=MM,MM` and `--fillet LETTER=MM`, each as often as wanted; nothing where none is. @throws WrongUsage */
export function seamWishesFrom(
  steepWords: readonly string[] | undefined,
  scoreWords: readonly string[] | undefined,
  filletWords?: readonly string[],
): SeamWishes | undefined {
  if (steepWords === undefined && scoreWords === undefined && filletWords === undefined) return undefined;
  const wishes = {
    ...given('steep', steepWords?.map(steepFrom)),
    ...given('scores', scoreWords?.map(scoreFrom)),
    ...given('fillets', filletWords?.map(filletFrom)),
  };
  const letters = [...(wishes.steep ?? []), ...(wishes.scores ?? [])].map(({ letter }) => letter);
  const twice = letters.find((letter, i) => letters.indexOf(letter) !== i);
  if (twice !== undefined) throw new WrongUsage(`seam ${twice} is named twice: say one thing of a seam.`);
  return wishes;
}

function steepFrom(word: string): { letter: string; way: SteepWay } {
  const { letter, value } = namedSeam('steep', word, 'A=split');
  const way = oneOf('steep', value, STEEP_WAYS, `${letter}= and one of `);
  return { letter, way: way ?? 'split' };
}

function scoreFrom(word: string): { letter: string; depthMm: number; openMm: number } {
  const { letter, value } = namedSeam('score', word, 'A=3,2');
  // No decimal commas here: `1,5` is two numbers.
  const [depthMm, openMm = FIRST_SCORE.openMm, ...rest] = value.split(',').map(decimal);
  const isScore = depthMm > 0 && depthMm <= MOST_SCORE_MM && openMm >= 0 && openMm <= MOST_SCORE_MM;
  if (!isScore || rest.length > 0)
    throw new WrongUsage(
      `--score takes how deep and how wide it opens in mm, as ${letter}=3,2, not ${value === '' ? 'nothing' : value}.`,
    );
  return { letter, depthMm, openMm };
}

function filletFrom(word: string): { letter: string; radiusMm: number } {
  const { letter, value } = namedSeam('fillet', word, 'A=8');
  const radiusMm = decimal(value.replace(',', '.'));
  if (!(radiusMm >= 0 && radiusMm <= CLAY_MOST_MM))
    throw new WrongUsage(
      `--fillet takes the radius of the hollow in mm, at most ${CLAY_MOST_MM}, as ${letter}=8, or 0 for none, not ${value === '' ? 'nothing' : value}.`,
    );
  return { letter, radiusMm };
}

/** `LETTER=…`: letters as they are printed, however they are typed. */
function namedSeam(name: string, word: string, example: string): { readonly letter: string; readonly value: string } {
  const [letter, value, ...rest] = word.split('=');
  if (!/^\d*[a-z]+$/i.test(letter) || value === undefined || rest.length > 0)
    throw new WrongUsage(`--${name} looks like ${example}: a seam by its letter, and what is wanted of it.`);
  return { letter: letter.toUpperCase(), value };
}

/**
 * The same as changes of the project.
 * @param outcome of the project as it is, by which seams have their letters.
 * @throws Refused where no seam has such a letter, or what is wanted does not suit it.
 */
export function seamCommands(
  outcome: Outcome,
  { steep = [], scores = [], fillets = [] }: SeamWishes,
): readonly Command[] {
  return [
    ...steep.map(({ letter, way }) => {
      const option = `--steep ${letter}=${way}`;
      const chain = seamOf(outcome, letter, option);
      if (chain.kind !== 'butt')
        throw new Refused(`${option}: seam ${letter} is a ${chain.kind}, and only a butt seam is built so.`);
      if (!isBeyondBlade(outcome, chain))
        throw new Refused(
          `${option}: blade and table lean far enough for seam ${letter}, whose fold is ${foldText(chain)}.`,
        );
      return setSeamJoin(edgesOf(outcome, chain), { kind: 'butt', allowanceMm: 0, steep: way });
    }),
    ...scores.map(({ letter, ...sizes }) =>
      scoreSeam(edgesOf(outcome, seamOf(outcome, letter, `--score ${letter}`)), sizes),
    ),
    ...fillets.flatMap(({ letter, radiusMm }) => {
      const chain = outcome.cut?.chains.indexOf(seamOf(outcome, letter, `--fillet ${letter}`)) ?? -1;
      const names = namesOfOrder(outcome.layers[0], [chain]);
      return names.map((name) => setFillet(name, radiusMm === 0 ? null : radiusMm));
    }),
  ];
}

function seamOf({ cut }: Outcome, letter: string, option: string): SeamChain {
  const seams = cut?.chains.filter((chain) => chain.letter !== '') ?? [];
  const found = seams.find((chain) => chain.letter === letter);
  if (found !== undefined) return found;
  const known = seams.length === 0 ? 'has no seams' : `has ${letterRange(seams.map((chain) => chain.letter))}`;
  throw new Refused(`${option}: there is no seam ${letter}; the sculpt ${known}.`);
}

const letterRange = (letters: readonly string[]): string =>
  letters.length === 1 ? `one seam, ${letters[0]}` : `seams ${letters[0]} to ${letters[letters.length - 1]}`;

/** Edges of a seam in its own order, in numbers of the file. */
function edgesOf({ cut }: Outcome, { vertices }: SeamChain): readonly EdgePair[] {
  if (cut === null) throw new Error('edgesOf: not parted');
  const corners = [...vertices].map((v) => cut.mesh.fileVertex[v]);
  return corners.slice(1).map((corner, i) => [corners[i], corner] as const);
}

const isBeyondBlade = ({ findings }: Outcome, { id, steep }: SeamChain): boolean =>
  steep !== undefined || findings.some(({ code, where }) => code === 'foam/bevel-steep' && where.seam === id);

function foldText({ foldRad }: SeamChain): string {
  const sharpest = foldRad.reduce((most, fold) => Math.max(most, Math.abs(fold)), 0);
  return `at most ${Math.round((sharpest * 180) / Math.PI)} degrees`;
}
