import { formatMm, formatPlain } from '../../base/format-length.ts';
import { chainSweep } from '../../geom/outline.ts';
import type { InsertPiece, InsertPlan } from '../../model/insert.ts';
import type { PlainDraft, PlainStep, PlainWork, PlainWorkKind } from '../../model/plain-piece.ts';
import type { ShapeEdge } from '../../model/shape.ts';
import { sizeOfEdges } from './piece-size.ts';

/** What is cut for an insert and how it is put in. A piece that none of the sheets is right for has no place among what is cut, and its step says its size. */
export function insertWork(plan: InsertPlan): PlainWork {
  const pieces = plan.pieces.flatMap((piece): PlainDraft[] =>
    piece.thicknessMm === null ? [] : [draftOf(plan, piece, piece.thicknessMm)],
  );
  return { pieces, steps: stepsOf(plan), findings: plan.findings, form: plan.body };
}

function draftOf({ name: of }: InsertPlan, piece: InsertPiece, thicknessMm: number): PlainDraft {
  const { key, name, quantity, outline, holes } = piece;
  return {
    key,
    name,
    quantity,
    thicknessMm,
    drawnAt: 1,
    outline,
    holes,
    bend: { kind: 'flat' },
    lines: [],
    notes: [`${capital(name)} of the ${of}.`],
    areaMm2: areaOf(piece),
  };
}

const areaOf = ({ outline, holes }: InsertPiece): number =>
  [outline, ...holes].reduce((sum, ring) => sum + sweepOf(ring), 0);

const sweepOf = (ring: readonly ShapeEdge[]): number => chainSweep(ring.flatMap(({ segments }) => segments));

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

function stepsOf(plan: InsertPlan): readonly PlainStep[] {
  const { name, side, pocketMm, frames, framesMm, wayIn, pieces, wish, cuts } = plan;
  const steps: PlainStep[] = [];
  const step = (work: PlainWorkKind, text: string, keys: readonly string[] = [], glueMm2 = 0): void => {
    const cut = keys.filter((key) => pieces.some((own) => own.key === key && own.thicknessMm !== null));
    steps.push({
      work,
      pieces: cut,
      text,
      glueMm2,
      cautions: [...(glueMm2 > 0 ? ['adhesive'] : []), ...(work === 'insert' ? cautionsOf(plan) : [])],
    });
  };
  const inWall = pocketMm - framesMm;
  if (inWall > 0)
    step(
      'insert',
      `Let in the ${wish.kind === 'pane' ? 'rebate' : 'pocket'} for the ${name} from the ${side}, ${formatMm(inWall)} deep into the wall${sheetsText(plan)}.`,
    );
  const frame = pieces.find(({ key }) => key === 'frame');
  if (frame !== undefined)
    step(
      'lay',
      `Glue ${frames === 1 ? 'the frame' : `${frames} frames on each other`} round the pocket on the ${side}.`,
      ['frame'],
      2 * frames * areaOf(frame),
    );
  if (wish.channel !== undefined)
    step(
      'insert',
      `Cut the way for its wires, ${formatMm(wish.channel.widthMm)} wide and ${formatMm(wish.channel.depthMm)} deep, and lay them with a loop to spare.`,
    );
  const plate = pieces.find(({ key }) => key === 'plate');
  if (plate !== undefined)
    step(
      'lay',
      `Glue the plate${sizeText(plate)} ${plate.liesOn === null ? 'into its pocket' : `on the ${plate.liesOn}`}, its holes over those of the wall.`,
      ['plate'],
      2 * areaOf(plate),
    );
  const pane = pieces.find(({ key }) => key === 'pane');
  step('insert', putIn(plan, pane === undefined ? '' : sizeText(pane)), pane === undefined ? [] : ['pane']);
  const lid = pieces.find(({ key }) => key === 'lid');
  if (lid !== undefined)
    step(
      'insert',
      `Hold the lid with hook-and-loop tape or screws${wayIn === 'flush-lid' ? ', level with the wall' : ''}: it must come off again.`,
      ['lid'],
    );
  if (wayIn === 'closed' && cuts.length > 0) step('insert', `Try it once more, then close the pocket of the ${name}.`);
  return steps;
}

/** How the pocket lies in the sheets of a wall of several. */
function sheetsText({ cuts }: InsertPlan): string {
  const own = cuts.filter(({ what }) => what === 'pocket' || what === 'rebate');
  if (own.length < 2) return '';
  const words = own.map(({ sheet, isThrough, depthMm }) =>
    isThrough ? `through sheet ${sheet}` : `${formatPlain(depthMm)} mm into sheet ${sheet}`,
  );
  return `: ${words.join(', ')}, counted from the face`;
}

const sizeText = ({ outline, thicknessMm }: InsertPiece): string => {
  if (thicknessMm !== null) return '';
  const [long, wide] = sizeOfEdges(outline);
  return `, ${formatMm(long)} by ${formatMm(wide)},`;
};

function putIn({ name, wish }: InsertPlan, size: string): string {
  switch (wish.kind) {
    case 'pane':
      return `When all heat work is done, bed the pane${size} in its rebate with glue that stays soft.`;
    case 'magnet':
      return wish.pole === undefined
        ? `Hold the ${name} to its other half, mark the side that looks out, and glue it in.`
        : `Glue in the ${name}, its ${wish.pole} pole looking out${wish.pair === undefined ? '' : `, the other pole in its other half (${wish.pair})`}.`;
    case 'lamp':
      return `Put in the ${name}, run it for an hour, and feel its pocket before all is closed.`;
    case 'battery':
      return `Put in the ${name}; a fuse sits beside it, and nothing sharp looks into its pocket.`;
    case 'switch':
      return `Set the ${name} into its plate and join its wires.`;
    case 'anchor':
      return `Lead the webbing through the slots and sew it back on itself.`;
  }
}

function cautionsOf({ wish: { kind }, cell }: InsertPlan): readonly string[] {
  if (kind === 'pane') return ['clear-sheet'];
  if (kind === 'magnet') return ['magnets'];
  if (kind === 'lamp') return ['lamp-heat'];
  if (kind !== 'battery') return [];
  return [
    ...(cell === 'button' || cell === 'lithium-button' ? ['button-cells'] : []),
    ...(cell === 'lithium' || cell === 'lithium-button' ? ['lithium-cells'] : []),
  ];
}
