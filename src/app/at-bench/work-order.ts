import { SQUARE_DEG } from '../../base/lean-words.ts';
import type { PieceId } from '../../base/ids.ts';
import type { FinishWork } from '../../model/finish.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { GluingStep } from '../../model/gluing.ts';
import type { PartWork } from '../../model/part-work.ts';
import type { CutBeside } from '../../model/plain-piece.ts';
import type { RevisedPiece } from '../../project/done-commands.ts';
import type { Project, StepDone } from '../../project/project.ts';
import type { FinishStepWords } from '../../worker/finish-api.ts';
import type { BatchWords, ShopView, StepWords } from '../../worker/shop-api.ts';
import { allCut, type Bench } from '../bench-state.ts';
import { isUnfinished } from '../gluing-look.ts';
import { warmOf } from './warm-words.ts';

/** Kinds of work in the order in which they are done. */
export const PHASES = ['print', 'cut', 'bevel', 'form', 'fit', 'glue', 'parts', 'finish'] as const;
export type Phase = (typeof PHASES)[number];

/** All that is cut from foam. */
export type CutPiece = FoamPiece | CutBeside;

/** What is ticked off with a line: paper, a piece in one kind of work, or a step. */
export type LineTick =
  | { readonly of: 'printed'; readonly pieces: readonly RevisedPiece[] }
  | { readonly of: 'cut' | 'bevelled' | 'formed'; readonly piece: RevisedPiece }
  | { readonly of: 'step'; readonly step: StepDone };

interface AnyLine {
  /** The same as long as its meaning stays. */
  readonly key: string;
  readonly phase: Phase;
  readonly tick: LineTick;
  /** Ids of what can hurt in it; kinds of work where its cautions go by that. */
  readonly cautions: readonly string[];
  readonly hurts: readonly string[];
}

/** One thing to do. */
export type WorkLine = AnyLine &
  (
    | { readonly what: 'pages' | 'square' | 'fit' }
    | { readonly what: 'cut' | 'bevel' | 'form'; readonly piece: CutPiece }
    | {
        readonly what: 'glue';
        readonly step: GluingStep;
        readonly words: StepWords;
        /** Told before the first step of its batch; null at the others. */
        readonly batch: BatchWords | null;
      }
    | { readonly what: 'part'; readonly work: PartWork; readonly at: number }
    | {
        readonly what: 'finish';
        readonly work: FinishWork;
        readonly words: FinishStepWords;
        readonly when: string;
        readonly why: string;
      }
  );

/** Bending that strains the outside of the foam by less than this needs no work beforehand, per cent [J]. */
const BENT_PCT = 1;

/**
 * All that is to be done at the bench, in its order: paper, cutting, bevels, forming, dry fit, gluing with what is painted before a step, other
 * parts, finishing. Steps of gluing are left out as long as they are not known.
 */
export function workOrder(project: Project, bench: Bench, shop: ShopView | null): readonly WorkLine[] {
  const pieces = allCut(bench);
  if (pieces.length === 0) return [];
  const made = isUnfinished(bench) ? null : shop;
  const revisions = new Map<string, string>(pieces.map(({ id, revision }) => [id, revision]));
  const asOf = (ids: readonly PieceId[]): string =>
    [...new Set(ids)]
      .sort()
      .map((id) => revisions.get(id) ?? '')
      .join('.');
  return [
    ...printLines(project, bench, pieces),
    ...pieces.map((piece) => pieceLine('cut', 'cut', piece, ['cut'])),
    ...pieces.filter(leans).map((piece) => pieceLine('bevel', 'bevelled', piece, ['cut', 'sand'])),
    ...pieces
      .filter((piece) => isFormed(piece, made))
      .map((piece) => pieceLine('form', 'formed', piece, warmOf(made, piece.id).length > 0 ? ['heat'] : ['cut'])),
    ...((bench.dryFit?.perSeam.length ?? 0) === 0 ? [] : [fitLine(asOf(pieces.map(({ id }) => id)))]),
    ...(made === null ? [] : [...gluingLines(made, asOf), ...partLines(made, asOf), ...finishLines(made, asOf, null)]),
  ];
}

function printLines(project: Project, { paper }: Bench, pieces: readonly CutPiece[]): readonly WorkLine[] {
  if ((paper?.pages.length ?? 0) === 0) return [];
  const { name, orientation } = project.paper;
  const as = [name, orientation, project.printer ?? ''].join('.');
  const bare = { phase: 'print', cautions: [], hurts: [] } as const;
  return [
    { ...bare, key: 'print/pages', what: 'pages', tick: { of: 'printed', pieces } },
    { ...bare, key: 'print/square', what: 'square', tick: { of: 'step', step: { id: 'print/square', as } } },
  ];
}

const pieceLine = (
  what: 'cut' | 'bevel' | 'form',
  of: 'cut' | 'bevelled' | 'formed',
  piece: CutPiece,
  hurts: readonly string[],
): WorkLine => ({ key: `${what}/${piece.id}`, phase: what, what, piece, tick: { of, piece }, cautions: [], hurts });

/** Whether any edge of it is cut aslant. */
export function leans(piece: CutPiece): boolean {
  if ('draft' in piece)
    return [piece.draft.outline, ...piece.draft.holes]
      .flat()
      .some(({ bevelDeg }) => Object.values(bevelDeg).some((deg: number) => Math.abs(deg) >= SQUARE_DEG));
  if (!('saw' in piece) || piece.saw === undefined)
    return 'seam' in piece && 'bevelDeg' in piece && Math.abs(piece.bevelDeg) >= SQUARE_DEG;
  return piece.saw.byHand.length > 0 || piece.saw.settings.some(({ bevelDeg }) => bevelDeg !== 0);
}

/** Whether something is done to it between cutting and gluing; other parts have steps of their own for that. */
function isFormed(piece: CutPiece, shop: ShopView | null): boolean {
  if (!('folds' in piece)) return false;
  const { folds, kerfs, scores = [], bend } = piece;
  return (
    folds.some(({ groove }) => groove !== undefined) ||
    kerfs !== undefined ||
    scores.length > 0 ||
    (bend?.outsidePct ?? 0) >= BENT_PCT ||
    warmOf(shop, piece.id).length > 0
  );
}

const fitLine = (as: string): WorkLine => ({
  key: 'fit',
  phase: 'fit',
  what: 'fit',
  tick: { of: 'step', step: { id: 'fit', as } },
  cautions: [],
  hurts: [],
});

type AsOf = (ids: readonly PieceId[]) => string;

function gluingLines(shop: ShopView, asOf: AsOf): readonly WorkLine[] {
  return shop.gluing.steps.flatMap((step) => [
    ...finishLines(shop, asOf, step.number),
    glueLine(shop, step, asOf([...step.runs.flatMap(({ pieces }) => pieces), ...step.adds.pieces])),
  ]);
}

/** Known by its seams, so that it stays ticked where another order puts it elsewhere. */
function glueLine({ gluing, batches, steps }: ShopView, step: GluingStep, as: string): WorkLine {
  const { work, runs, adds, batch, number, cautions } = step;
  const seams = runs.map(({ seam, fromMm }) => (fromMm > 0 ? `${seam}+${Math.round(fromMm)}` : seam));
  const key = `glue/${(work === 'lay' ? adds.pieces : seams).join('.')}`;
  const isFirst = gluing.batches[batch - 1].steps[0] === number;
  return {
    key,
    phase: 'glue',
    what: 'glue',
    step,
    words: steps[number - 1],
    batch: isFirst ? batches[batch - 1] : null,
    tick: { of: 'step', step: { id: key, as } },
    cautions,
    hurts: [],
  };
}

function partLines({ parts }: ShopView, asOf: AsOf): readonly WorkLine[] {
  return parts.flatMap((work) =>
    work.steps.map((step, at): WorkLine => {
      const key = `part/${work.part}/${at}`;
      const as = [step.work, asOf(step.pieces)].join('.');
      return {
        key,
        phase: 'parts',
        what: 'part',
        work,
        at,
        tick: { of: 'step', step: { id: key, as } },
        cautions: step.cautions,
        hurts: [],
      };
    }),
  );
}

/** @param before number of the step of gluing they come before; null: what is done when all is glued. */
function finishLines({ finish }: ShopView, asOf: AsOf, before: number | null): readonly WorkLine[] {
  return finish.groups.flatMap(({ when, why, steps }) =>
    steps.flatMap((words): readonly WorkLine[] => {
      const { beforeStep, work, name, colour, pieces } = finish.plan.steps[words.number - 1];
      if (beforeStep !== before) return [];
      const key = ['finish', work, colour ?? name, pieces[0]].join('/');
      return [
        {
          key,
          phase: before === null ? 'finish' : 'glue',
          what: 'finish',
          work,
          words,
          when,
          why,
          tick: { of: 'step', step: { id: key, as: asOf(pieces) } },
          cautions: words.cautions,
          hurts: [],
        },
      ];
    }),
  );
}
