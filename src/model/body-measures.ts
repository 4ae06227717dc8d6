import type { Finding } from '../base/finding.ts';

/** How a measure is taken: with a tape round the body, between two callipers or walls, or along it. */
export type BodyMeasureWay = 'girth' | 'breadth' | 'length';

/** A measure of the body that a part may be sized by. */
export interface BodyMeasureKind {
  readonly name: string;
  /** As on a list. */
  readonly title: string;
  readonly way: BodyMeasureWay;
  /** How it is taken, a few words. */
  readonly taken: string;
  /** Of grown people hardly less or more, mm: outside it a reading is looked at again, not refused. */
  readonly usualMm: readonly [least: number, most: number];
}

/**
 * Where names and ranges come from. Names follow the trade and ISO 8559-1:2017 (Size designation of clothes, anthropometric definitions) where it has
 * them. Ranges are rounded outward from a survey of grown people (NATICK/TR-15/007, 2014) and meant to catch slips of the tape and of the unit alone.
 */
export const BODY_MEASURE_SOURCE =
  'names as in ISO 8559-1; ranges from memory of NATICK/TR-15/007 (2014), rounded outward';

export const BODY_MEASURES: readonly BodyMeasureKind[] = [
  kind('head-girth', 'Head girth', 'girth', 'over the brow and round the back, hair in', 480, 660),
  kind('head-breadth', 'Head breadth', 'breadth', 'widest over the ears, between two boards', 125, 185),
  kind('head-length', 'Head length', 'breadth', 'brow to the back of the head, between two boards', 160, 230),
  kind('neck-girth', 'Neck girth', 'girth', 'under the larynx', 270, 540),
  kind('shoulder-breadth', 'Shoulder breadth', 'breadth', 'over both upper arms, arms down', 350, 650),
  kind('chest-girth', 'Chest girth', 'girth', 'fullest, level, breathing out', 700, 1500),
  kind('waist-girth', 'Waist girth', 'girth', 'between ribs and hip bone', 550, 1500),
  kind('hip-girth', 'Hip girth', 'girth', 'fullest over the seat', 750, 1600),
  kind('upper-arm-girth', 'Upper arm girth', 'girth', 'fullest, arm bent and tensed', 210, 520),
  kind('forearm-girth', 'Forearm girth', 'girth', 'fullest, fist closed', 190, 400),
  kind('wrist-girth', 'Wrist girth', 'girth', 'over the bone', 125, 220),
  kind('hand-girth', 'Hand girth', 'girth', 'over the knuckles, thumb tucked in: what passes a bracer', 160, 280),
  kind('arm-length', 'Arm length', 'length', 'shoulder bone over the bent elbow to the wrist', 450, 800),
  kind('forearm-length', 'Forearm length', 'length', 'elbow to wrist', 200, 340),
  kind('hand-length', 'Hand length', 'length', 'wrist to the tip of the middle finger', 145, 230),
  kind('torso-length', 'Torso length', 'length', 'nape to waist along the back', 340, 560),
  kind('thigh-girth', 'Thigh girth', 'girth', 'fullest, under the seat', 400, 850),
  kind('knee-girth', 'Knee girth', 'girth', 'over the knee cap, leg bent a little', 300, 550),
  kind('calf-girth', 'Calf girth', 'girth', 'fullest', 270, 560),
  kind('ankle-girth', 'Ankle girth', 'girth', 'over the bones', 180, 330),
  kind('shin-length', 'Shin length', 'length', 'knee to ankle', 300, 520),
  kind('foot-length', 'Foot length', 'length', 'heel to the longest toe', 200, 330),
  kind('height', 'Height', 'length', 'standing, without shoes', 1400, 2100),
];

function kind(
  name: string,
  title: string,
  way: BodyMeasureWay,
  taken: string,
  least: number,
  most: number,
): BodyMeasureKind {
  return { name, title, way, taken, usualMm: [least, most] };
}

/** What the maker measured. */
export interface BodyMeasure {
  /** Of {@link BODY_MEASURES}. */
  readonly name: string;
  /** > 0. */
  readonly mm: number;
}

/** Where on a part a measure of the body is met. */
export type BodyPlace =
  /** Round the inside of the foam in the plane of a tape of the part. */
  | { readonly by: 'tape'; readonly tape: string }
  /** Along an axis of the sculpt, over a share of the measure: a staff as long as its bearer is high, share 1; a shin guard 0.9 of the shin. */
  | { readonly by: 'extent'; readonly axis: 'longest' | 'x' | 'y' | 'z'; readonly share: number };

/** A part's size follows one measure of the body. */
export interface BodyTie {
  readonly measure: string;
  /** How much larger than the body, mm; of a girth all the way round. Negative where foam is to be stretched on. */
  readonly easeMm: number;
  readonly at: BodyPlace;
}

/** Ease and share are no wilder than this, mm and as a factor. */
export const MOST_EASE_MM = 1000;
export const MOST_SHARE = 10;
/** Longest measure taken, mm. */
export const MOST_MEASURE_MM = 4000;

export const kindOfMeasure = (name: string): BodyMeasureKind | undefined =>
  BODY_MEASURES.find((one) => one.name === name) ?? BODY_MEASURES.find((one) => one.name === `${name}-girth`);

/** @throws RangeError on a measure that is none. */
export function checkBodyMeasure({ name, mm }: BodyMeasure): void {
  if (BODY_MEASURES.every((one) => one.name !== name)) throw new RangeError(`no measure of the body is named ${name}`);
  if (!(mm > 0 && mm <= MOST_MEASURE_MM)) throw new RangeError(`${name}: ${mm} mm`);
}

/** @throws RangeError on a tie that nothing can be sized by. */
export function checkBodyTie({ measure, easeMm, at }: BodyTie): void {
  if (BODY_MEASURES.every(({ name }) => name !== measure))
    throw new RangeError(`no measure of the body is named ${measure}`);
  if (!(Math.abs(easeMm) <= MOST_EASE_MM)) throw new RangeError(`ease ${easeMm} mm`);
  if (at.by === 'extent' && !(at.share > 0 && at.share <= MOST_SHARE)) throw new RangeError(`share ${at.share}`);
}

/** What is odd about measures: those out of the usual, told and not refused. */
export function bodyFindings(measures: readonly BodyMeasure[]): readonly Finding[] {
  return measures.flatMap(({ name, mm }): readonly Finding[] => {
    const known = kindOfMeasure(name);
    if (known === undefined) return [];
    const [least, most] = known.usualMm;
    if (mm >= least && mm <= most) return [];
    return [
      {
        code: 'body/unusual',
        severity: 'note',
        text: `${known.title}, ${known.taken}: ${Number(mm.toFixed(1))} mm is ${mm < least ? 'less' : 'more'} than of most grown people (${least} to ${most} mm); measure again if that is not so, and look at the unit.`,
        value: mm,
        limit: mm < least ? least : most,
        unit: 'mm',
        where: {},
      },
    ];
  });
}
