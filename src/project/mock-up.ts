import { needSculptAtWork } from './at-work.ts';
import { foamId } from '../base/ids.ts';
import { formatPlain } from '../base/format-length.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { FOAM_RULES } from '../model/foam-settings.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { SeamSetting } from '../model/seams.ts';
import { pathName } from './path-names.ts';
import type { Project, SculptPart } from './project.ts';

/** A small prop of card that shows in ten minutes whether the pieces close. */
export interface MockUp {
  /** How many times smaller than the prop: 4 for 1:4. */
  readonly times: number;
  /** Thickness of the card, mm. */
  readonly cardMm: number;
}

/** From the prop's own size to a toy's; from paper to the back of a pad, mm. */
export const MOCK_UP_LIMITS = {
  times: { least: 1, most: 20 },
  cardMm: { least: 0.1, most: 3 },
} as const;

/** A quarter of the prop in the card of a cereal box [J]. */
export const USUAL_MOCK_UP: MockUp = { times: 4, cardMm: 0.4 };

const CARD = foamId('card');

/** `1:4`. */
export const scaleText = ({ times }: MockUp): string => `1:${formatPlain(times)}`;

/** Fails with `mock-up/scale` or `mock-up/card` where nobody could mean that. */
export function checkMockUp(mockUp: MockUp): Result<MockUp> {
  const isWithin = (value: number, { least, most }: { readonly least: number; readonly most: number }): boolean =>
    value >= least && value <= most;
  const { times, cardMm } = MOCK_UP_LIMITS;
  if (!isWithin(mockUp.times, times))
    return fail(
      'mock-up/scale',
      `A mock-up is ${times.least} to ${times.most} times smaller than the prop, not ${mockUp.times}.`,
    );
  if (!isWithin(mockUp.cardMm, cardMm))
    return fail('mock-up/card', `Card is ${cardMm.least} to ${cardMm.most} mm thick, not ${mockUp.cardMm}.`);
  return ok(mockUp);
}

/**
 * The project of the mock-up: the same sculpt, seams and names, smaller, in one sheet of card whose edges are all cut square, butted on the inside
 * of every fold, with nothing added for laps. What is said of foam, the body, slits, raised sheets and the shop is left out.
 * @param mmPerUnit of the sculpt at its full size.
 * @param longest   of the sculpt's file, in its own units.
 */
export function mockUpProject(
  project: Project,
  mockUp: MockUp,
  { mmPerUnit, longest }: { readonly mmPerUnit: number; readonly longest: number },
): Project {
  const { times, cardMm } = mockUp;
  const part = needSculptAtWork(project);
  const { schemaVersion, name, revision, paper, printers, printer, lengthUnit } = project;
  return {
    schemaVersion,
    name: `${name}, paper mock-up ${scaleText(mockUp)}, not for foam`,
    revision,
    // A printed card is cut from: its other side shows no line to turn over.
    paper: { ...paper, mirrored: 'each' },
    lengthUnit,
    ...(printers === undefined ? {} : { printers }),
    ...(printer === undefined ? {} : { printer }),
    foams: [card(times, cardMm)],
    parts: [mockUpPart(part, mockUp, (longest * mmPerUnit) / times)],
  };
}

function card(times: number, thicknessMm: number): FoamSheet {
  return {
    id: CARD,
    name: `card ${formatPlain(thicknessMm)} mm`,
    thicknessMm,
    // Card is no foam to lay out: any piece fits.
    sheetWidthMm: 5000,
    sheetHeightMm: 5000,
    neutralFraction: 0.5,
    densityKgM3: 750,
    stretchLimits: { noticePct: 100, tooMuchPct: 100 },
    bendLimits: { noticePct: 100, tooMuchPct: 100 },
    rules: {
      // Every edge square.
      bevelLimitDeg: 0,
      markSpacingMm: Math.max(30, FOAM_RULES.markSpacingMm / times),
      markLeastSeamMm: Math.max(8, FOAM_RULES.markLeastSeamMm / times),
      narrowThicknesses: 0,
      // Folds are scored and bent, not grooved: what bends is all of the card.
      hingeMm: Math.max(FOAM_RULES.hingeMm, 2 * thicknessMm),
    },
  };
}

function mockUpPart(part: SculptPart, { times, cardMm }: MockUp, longestMm: number): SculptPart {
  const { seams } = part;
  const { simplify, offMm, mirror, hiddenSide, heldSeams } = part;
  const square = (edge: SeamSetting['edge']): SeamSetting => ({ edge, kind: 'butt', allowanceMm: 0, steep: 'fill' });
  return {
    kind: part.kind,
    id: part.id,
    name: part.name,
    source: part.source,
    transform: part.transform,
    copies: part.copies,
    scale: { by: 'size', axis: 'longest', mm: longestMm },
    upAxis: part.upAxis,
    repairs: part.repairs,
    ...(simplify === undefined
      ? {}
      : {
          simplify:
            simplify.deviationMm === undefined ? simplify : { ...simplify, deviationMm: simplify.deviationMm / times },
        }),
    seams: {
      edges: seams.edges,
      paths: seams.paths.map(({ points, locked }) => ({
        points,
        kind: 'butt',
        ...(locked === undefined ? {} : { locked }),
      })),
    },
    seamSettings: [...seams.edges.map(square), ...seams.paths.map((_, i) => square(pathName(i)))],
    ...(heldSeams === undefined ? {} : { heldSeams }),
    ...(mirror === undefined ? {} : { mirror }),
    ...(hiddenSide === undefined ? {} : { hiddenSide }),
    pieceSettings: part.pieceSettings.map(({ face, name, quantity, bendStyle, held }) => ({
      face,
      ...(name === undefined ? {} : { name }),
      ...(quantity === undefined ? {} : { quantity }),
      ...(bendStyle === undefined ? {} : { bendStyle: bendStyle === 'kerfed' ? 'rolled' : bendStyle }),
      ...(held === undefined ? {} : { held }),
    })),
    flatten: part.flatten,
    regions: part.regions.map(({ raised: _, clayCore: __, ...region }) => region),
    edgeWishes: part.edgeWishes,
    modelIs: part.modelIs,
    ...(offMm === undefined ? {} : { offMm: offMm / times }),
    layers: [
      {
        id: part.layers[part.layers.length - 1].id,
        foam: CARD,
        thicknessMm: cardMm,
        neutralFraction: 0.5,
        allowForShrinkage: false,
      },
    ],
    tracedSide: 'face',
  };
}
