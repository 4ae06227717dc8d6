import type { PartId } from '../base/ids.ts';
import type { TrimEnd, TrimProfile } from '../model/trim.ts';
import { USUAL_LEAN_DEG, USUAL_STRAP, USUAL_TURN_DEG } from '../project/new-strips.ts';
import type { NewPlain } from '../project/plain-commands.ts';
import type { ListedPart } from '../project/parts-file.ts';
import { PLAIN_STRIP, type StripAlong, type StripWish } from '../project/trim-part.ts';
import { WrongUsage } from './exit.ts';
import { figureValues } from './listed-figures.ts';
import type { PartBase } from './listed-part.ts';
import { given, number, oneOf } from './option-values.ts';

/** The sculpt of a name or id; without one, the only sculpt there is. @throws WrongUsage */
export type SculptOf = (text: string | undefined) => PartId;

const MOST_MM = 1e5;

/** The figures of one part, each asked for once. */
class Figures {
  readonly #listed: Pick<ListedPart, 'figures'>;
  readonly #values: Record<string, string | boolean | string[]>;

  constructor(listed: Pick<ListedPart, 'figures'>) {
    this.#listed = listed;
    this.#values = { ...figureValues(listed) };
  }

  text(name: string): string | undefined {
    const value = this.#values[name];
    delete this.#values[name];
    if (value === undefined) return undefined;
    if (typeof value !== 'string') throw new WrongUsage(`--${name} is a text or a number.`);
    return value;
  }

  /** The usual where it is left out. */
  mm(name: string, usual: number, limits: { least?: number; over?: number } = { over: 0 }): number {
    return number(name, this.text(name), { ...limits, most: MOST_MM }) ?? usual;
  }

  needMm(name: string): number {
    const mm = number(name, this.text(name), { over: 0, most: MOST_MM });
    if (mm === undefined) throw new WrongUsage(`--${name} is missing: a length in mm.`);
    return mm;
  }

  is(name: string, usual: boolean): boolean {
    delete this.#values[name];
    const value = this.#listed.figures[name] ?? usual;
    if (typeof value !== 'boolean') throw new WrongUsage(`--${name} is true or false.`);
    return value;
  }

  /** @throws WrongUsage where one was not asked for. */
  done(kind: string): void {
    const [stray] = Object.keys(this.#values);
    if (stray !== undefined) throw new WrongUsage(`--${stray} is no field of a part of the kind ${kind}.`);
  }
}

/** Strips along seams or a line. @throws WrongUsage */
export function trimOf(listed: ListedPart, base: PartBase, sculptOf: SculptOf): NewPlain {
  const figures = new Figures(listed);
  const on = sculptOf(figures.text('on'));
  const part: NewPlain = { kind: 'trim', ...base, on, along: alongOf(figures), strip: stripOf(figures) };
  figures.done('trim');
  return part;
}

/** Strips over all seams in view. @throws WrongUsage */
export function coversOf(listed: ListedPart, base: PartBase, sculptOf: SculptOf): NewPlain {
  const figures = new Figures(listed);
  const on = sculptOf(figures.text('on'));
  const mostTurnDeg = number('most-turn', figures.text('most-turn'), { least: 0, most: 150 }) ?? USUAL_TURN_DEG;
  const without = figures.text('without')?.split(',').map(edgeOf);
  const part: NewPlain = {
    kind: 'covers',
    ...base,
    on,
    strip: stripOf(figures),
    mostTurnDeg,
    ...given('without', without),
  };
  figures.done('covers');
  return part;
}

/** A strap. @throws WrongUsage */
export function strapOf(listed: ListedPart, base: PartBase): NewPlain {
  const figures = new Figures(listed);
  const usual = USUAL_STRAP;
  const tip = figures.text('tip');
  const point = number('tip', tip === 'rounded' ? undefined : tip, { over: 0, most: MOST_MM });
  const part: NewPlain = {
    kind: 'strap',
    ...base,
    strap: {
      girthMm: figures.needMm('girth'),
      widthMm: figures.needMm('width'),
      overlapMm: figures.mm('overlap', usual.overlapMm),
      holes: {
        count: number('holes', figures.text('holes'), { least: 1, most: 100 }) ?? usual.holes.count,
        spacingMm: figures.mm('hole-spacing', usual.holes.spacingMm),
        diameterMm: figures.mm('hole-diameter', usual.holes.diameterMm),
      },
      tip: point === undefined ? { kind: 'rounded' } : { kind: 'pointed', lengthMm: point },
      buckle: {
        barMm: figures.mm('bar', usual.buckle.barMm),
        tabMm: figures.mm('tab', usual.buckle.tabMm),
        slotWidthMm: figures.mm('slot', usual.buckle.slotWidthMm, { least: 0 }),
      },
      keeperWidthMm: figures.mm('keeper', usual.keeperWidthMm),
      isReinforced: figures.is('reinforced', usual.isReinforced),
    },
  };
  figures.done('strap');
  return part;
}

function alongOf(figures: Figures): StripAlong {
  const [seams, line] = [figures.text('along'), figures.text('line')];
  const closed = figures.is('closed', false);
  if ((seams === undefined) === (line === undefined))
    throw new WrongUsage(
      '--along names seams by letter or id, or edges of the sculpt as 12-13; --line the corners a line runs through: give one of the two.',
    );
  if (line !== undefined) {
    const corners = line.split(',').map((word) => Number(word));
    if (corners.length < 2 || !corners.every((corner) => Number.isInteger(corner) && corner >= 0))
      throw new WrongUsage('--line takes two or more corners by their numbers in the file.');
    return { by: 'line', points: corners.map((vertex) => ({ vertex })), closed };
  }
  const words = (seams ?? '').split(',').map((word) => word.trim());
  return words.every((word) => EDGE.test(word))
    ? { by: 'edges', edges: words.map(edgeOf) }
    : { by: 'seams', ids: words };
}

const EDGE = /^\d+-\d+$/;

function edgeOf(word: string): readonly [number, number] {
  if (!EDGE.test(word.trim()))
    throw new WrongUsage('--without takes edges of the sculpt as pairs of corners in the file, like 12-13.');
  const [a, b] = word.split('-').map(Number);
  return [a, b];
}

function stripOf(figures: Figures): StripWish {
  const usual = PLAIN_STRIP;
  const widthMm = figures.mm('width', usual.widthMm);
  const longest = figures.text('most-length');
  return {
    ...usual,
    widthMm,
    leftShare: number('left-share', figures.text('left-share'), { least: 0, most: 1 }) ?? usual.leftShare,
    profile: profileOf(figures),
    start: endOf('start', figures),
    end: endOf('end', figures),
    overlapMm: figures.mm('overlap', usual.overlapMm, { least: 0 }),
    ...given('mostLengthMm', number('most-length', longest, { over: 2 * widthMm, most: MOST_MM })),
    withinMm: figures.mm('within', usual.withinMm),
    hasMarks: figures.is('marks', true),
  };
}

function profileOf(figures: Figures): TrimProfile {
  const kind =
    oneOf('profile', figures.text('profile'), [
      'flat',
      'bevelled',
      'half-round',
      'quarter-round',
      'edge-roll',
      'u-binding',
    ]) ?? 'flat';
  const from = () => oneOf('from', figures.text('from'), ['bought', 'cut']) ?? 'cut';
  switch (kind) {
    case 'flat':
      return { kind };
    case 'bevelled':
      return {
        kind,
        leanDeg: number('lean', figures.text('lean'), { over: 0, most: 79 }) ?? USUAL_LEAN_DEG,
        sides: oneOf('sides', figures.text('sides'), ['both', 'left', 'right']) ?? 'both',
      };
    case 'half-round':
      return { kind, from: from() };
    case 'quarter-round':
      return { kind, from: from(), square: oneOf('square', figures.text('square'), ['left', 'right']) ?? 'left' };
    case 'edge-roll':
      return {
        kind,
        rimMm: figures.needMm('rim'),
        radiusMm: figures.needMm('radius'),
        lapMm: figures.mm('lap', 0, { least: 0 }),
      };
    case 'u-binding':
      return {
        kind,
        rimMm: figures.needMm('rim'),
        depthMm: figures.needMm('depth'),
        insideRadiusMm: figures.mm('inside-radius', 0, { least: 0 }),
      };
  }
}

/** `square`, `mitre 30` or `pointed 20`. */
function endOf(name: 'start' | 'end', figures: Figures): TrimEnd {
  const word = figures.text(name);
  if (word === undefined || word === 'square') return { kind: 'square' };
  const [kind, size] = word.trim().split(/\s+/);
  if (kind === 'mitre' && size !== undefined)
    return { kind, turnDeg: number(name, size, { least: -149, most: 149 }) ?? 0 };
  if (kind === 'pointed' && size !== undefined)
    return { kind, lengthMm: number(name, size, { over: 0, most: MOST_MM }) ?? 0 };
  throw new WrongUsage(`--${name} is square, mitre 30 (the whole turn, degrees) or pointed 20 (mm), not ${word}.`);
}
