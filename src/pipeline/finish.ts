import type { Finding } from '../base/finding.ts';
import { formatMm } from '../base/format-length.ts';
import type { SeamId } from '../base/ids.ts';
import type { Stepwise } from '../base/stepwise.ts';
import { clayLayers, FIRST_CLAY, type Clay } from '../model/clay.ts';
import { coatingsInForce } from '../model/coatings.ts';
import { checkFinishPlan, type ClayItem, type ColourSum, type FinishPlan } from '../model/finish.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { GluingPlan } from '../model/gluing.ts';
import type { SculptPart } from '../project/project.ts';
import { filletAlong, liftedVolumeMm3 } from '../steps/shop/clay-volumes.ts';
import { colourSums, finishPlanOf } from '../steps/shop/finish-plan.ts';
import { looseBodies } from '../steps/shop/paint-loose.ts';
import { shutInPieces } from '../steps/shop/paint-reach.ts';
import { finishSkin, stretchesOnFace, type FoundSkin } from './finish-skin.ts';
import type { Outcome, SculptOutcome } from './outcome.ts';
import { chainsNamed } from './shop-order.ts';

/** How the prop is finished, and what it was found from. */
export interface Finish {
  readonly plan: FinishPlan;
  readonly found: FoundSkin;
  readonly findings: readonly Finding[];
}

const MM3_PER_ML = 1000;

/** What is painted in which colour and modelled in clay, as it stands in report.json; null where nothing is. */
export function finishSums(outcome: Outcome): FinishSums | null {
  const { colours = [], baseColour, clay = FIRST_CLAY } = outcome.project.shop ?? {};
  const found = finishSkin(outcome, colours, baseColour);
  const base = colours.findIndex(({ id }) => id === baseColour);
  const sums = colourSums({ skin: found.skin, pieces: outcome.pieces ?? [], colours, base });
  const items = [...filletItems(outcome, clay).items, ...shapeItems(outcome, found, clay), ...coreItems(outcome, clay)];
  return sums.length + items.length === 0 ? null : { colours: sums, clay: items };
}

export interface FinishSums {
  readonly colours: readonly ColourSum[];
  readonly clay: readonly ClayItem[];
}

/** @throws Error where the chain has not run to its end. */
export function* finishSteps(outcome: Outcome, gluing: GluingPlan): Stepwise<Finish> {
  const { project, part, sculpts } = outcome;
  const shop = project.shop ?? {};
  const { colours = [], baseColour, clay = FIRST_CLAY } = shop;
  const coatings = coatingsInForce(shop);
  const found = finishSkin(outcome, colours, baseColour);
  yield;
  const pieces = outcome.pieces ?? [];
  const isPainted = found.skin.colourOf.some((colour) => colour >= 0);
  const fillets = filletItems(outcome, clay);
  const items = [...fillets.items, ...shapeItems(outcome, found, clay), ...coreItems(outcome, clay)];
  const shutIn = isPainted ? shutInPieces(found.skin, pieces.length) : [];
  yield;
  const loose = isPainted
    ? looseBodies({
        skin: found.skin,
        ids: pieces.map(({ id }) => id),
        steps: gluing.steps,
        filled: new Set(fillets.seams),
        shutIn: new Set(pieces.filter((_, p) => shutIn[p]).map(({ id }) => id)),
      })
    : [];
  yield;
  const plan = finishPlanOf({
    skin: found.skin,
    pieces,
    colours,
    base: colours.findIndex(({ id }) => id === baseColour),
    coatings,
    clay,
    clayItems: items,
    loose,
    seams: sculpts.flatMap(({ layers }) => layers.at(0)?.seams ?? []),
    steps: gluing.steps,
  });
  checkFinishPlan(plan);
  const twice = coatings.find(({ use }) => use === 'paint');
  const doubled: Finding[] =
    twice !== undefined && baseColour !== undefined
      ? [
          {
            code: 'finish/painted-twice',
            severity: 'note',
            text: `${twice.name} goes on all over, and the base colour on top of it: take it out of the coats if the base colour is that paint.`,
            where: part === null ? {} : { part: part.id },
          },
        ]
      : [];
  return { plan, found, findings: [...fillets.findings, ...doubled] };
}

interface Fillets {
  readonly items: readonly ClayItem[];
  readonly seams: readonly SeamId[];
  readonly findings: readonly Finding[];
}

function filletItems({ sculpts }: Outcome, clay: Clay): Fillets {
  const all = sculpts.map((own) => filletsOf(own, clay));
  return {
    items: all.flatMap(({ items }) => items),
    seams: all.flatMap(({ seams }) => seams),
    findings: all.flatMap(({ findings }) => findings),
  };
}

function filletsOf({ part, layers }: SculptOutcome, clay: Clay): Fillets {
  const [seen] = layers;
  const [cut, pieces] = [need(seen.cut), need(seen.pieces)];
  const items: ClayItem[] = [];
  const seams: SeamId[] = [];
  const findings: Finding[] = [];
  for (const fillet of part.fillets ?? []) {
    const index = chainsNamed(seen, [fillet]).at(0);
    const place = { part: part.id };
    if (index === undefined) {
      findings.push({
        code: 'finish/fillet-lost',
        severity: 'warning',
        text: `A fillet of ${formatMm(fillet.radiusMm)} was wanted along a seam that is no more: mark it again on a seam there is.`,
        where: place,
      });
      continue;
    }
    const chain = cut.chains[index];
    const { lengthMm, volumeMm3, deepestMm } = filletAlong(chain.foldRad, stretchesOnFace(cut, chain), fillet.radiusMm);
    if (lengthMm === 0) {
      findings.push({
        code: 'finish/fillet-none',
        severity: 'warning',
        text: `Seam ${chain.letter} is nowhere hollow on its face: no fillet of clay goes there; take it off, or choose a seam with an inner corner.`,
        where: { ...place, seam: chain.id },
      });
      continue;
    }
    seams.push(chain.id);
    items.push({
      what: 'fillet',
      name: chain.letter,
      pieces: [...new Set(chain.sides.flatMap(({ patch }) => pieces.find((piece) => piece.patch === patch)?.id ?? []))],
      lengthMm,
      areaMm2: 0,
      sizeMm: fillet.radiusMm,
      ml: volumeMm3 / MM3_PER_ML,
      deepestMm,
      layers: clayLayers(deepestMm, clay.layerMm),
    });
  }
  return { items, seams, findings };
}

/** Areas in clay over a core, with the pieces that end round them. */
const coreItems = ({ sculpts }: Outcome, clay: Clay): readonly ClayItem[] =>
  sculpts.flatMap((own) => coresOf(own, clay));

function coresOf({ areasInClay, layers, pieces }: SculptOutcome, clay: Clay): readonly ClayItem[] {
  const [seen] = layers;
  return areasInClay.map(({ part: { name }, made: { figures } }) => {
    const rim = new Set(figures.borders.flatMap(({ vertices }) => vertices));
    const { patches, mesh } = need(seen.cut);
    const round = need(seen.pieces).filter(({ patch }) =>
      patches[patch].meshVertices.some((v) => rim.has(mesh.fileVertex[v])),
    );
    const deepestMm = figures.depthMm + figures.depthBoundMm;
    return {
      what: 'core',
      name,
      pieces: (round.length === 0 ? (pieces ?? []) : round).map(({ id }) => id),
      lengthMm: 0,
      areaMm2: figures.areaMm2,
      sizeMm: figures.coverMm,
      ml: figures.clayMm3 / MM3_PER_ML,
      deepestMm,
      layers: clayLayers(deepestMm, clay.layerMm),
    };
  });
}

function need<T>(value: T | null): T {
  if (value === null) throw new Error('finish: the chain has not run to its end');
  return value;
}

/** Shapes over areas; where areas meet, the later one that has a shape counts. */
function shapeItems({ sculpts, pieces }: Outcome, found: FoundSkin, clay: Clay): readonly ClayItem[] {
  return sculpts.flatMap(({ part }) => shapesOf(part, pieces ?? [], found, clay));
}

function shapesOf(
  { id: part, regions }: SculptPart,
  pieces: readonly FoamPiece[],
  { skin, faceOf, moves }: FoundSkin,
  clay: Clay,
): readonly ClayItem[] {
  const shaped = regions.filter((region) => region.clay !== undefined);
  const owner = new Map<number, string>();
  for (const { id, faces } of shaped) for (const face of faces) owner.set(face, id);
  return shaped.flatMap(({ id, name, clay: shape }): ClayItem[] => {
    const isOfPart = (t: number): boolean => pieces[skin.pieceOf[t]].part === part;
    const own = [...faceOf.keys()].filter((t) => owner.get(faceOf[t]) === id && isOfPart(t));
    if (own.length === 0 || shape === undefined) return [];
    const pick = (values: Float64Array): Float64Array => {
      const kept = new Float64Array(9 * own.length);
      own.forEach((t, i) => kept.set(values.subarray(9 * t, 9 * t + 9), 9 * i));
      return kept;
    };
    const { heightMm } = shape;
    const on = new Set(own.map((t) => skin.pieceOf[t]));
    return [
      {
        what: 'shape',
        name,
        pieces: pieces.filter((_, p) => on.has(p)).map((piece) => piece.id),
        lengthMm: 0,
        areaMm2: own.reduce((sum, t) => sum + skin.areaMm2[t], 0),
        sizeMm: heightMm,
        ml: liftedVolumeMm3(pick(skin.corners), pick(moves), heightMm) / MM3_PER_ML,
        deepestMm: heightMm,
        layers: clayLayers(heightMm, clay.layerMm),
      },
    ];
  });
}
