import { parseLength } from '../base/format-length.ts';
import {
  BODY_MEASURES,
  kindOfMeasure,
  MOST_EASE_MM,
  MOST_MEASURE_MM,
  MOST_SHARE,
  type BodyMeasure,
  type BodyPlace,
} from '../project/body-commands.ts';
import type { ScaleChoice } from '../model/source-model.ts';
import { WrongUsage } from './exit.ts';
import { decimal, number, oneOf } from './option-values.ts';

/** A part sized by the body, as the command line said it. */
export interface BodyOption {
  readonly measure: BodyMeasure;
  readonly scale: Extract<ScaleChoice, { by: 'body' }>;
}

/**
 * `--body forearm=280mm --ease 15 --girth-at y=120`, or along an axis: `--body height=1800 --body-along y=0.9`.
 * @param tape  id of the tape that --girth-at lays; undefined where none is.
 * @throws WrongUsage
 */
export function bodyFrom(
  values: {
    readonly body?: string;
    readonly 'body-along'?: string;
    readonly ease?: string;
    readonly unit?: string;
    readonly size?: string;
  },
  tape: string | undefined,
): BodyOption | undefined {
  const { body, 'body-along': along } = values;
  if (body === undefined) {
    if (along !== undefined)
      throw new WrongUsage('--body-along belongs to --body: say which measure, as --body height=1800.');
    return undefined;
  }
  if (values.unit !== undefined || values.size !== undefined)
    throw new WrongUsage('--body says how large the sculpt is: leave --unit and --size out.');
  const [word, length = '', ...rest] = body.split('=');
  const kind = kindOfMeasure(word);
  const mm = parseLength(length, 'mm');
  if (kind === undefined)
    throw new WrongUsage(
      `--body knows no measure ${word}; it knows ${BODY_MEASURES.map(({ name }) => name).join(', ')}.`,
    );
  if (rest.length > 0 || mm === null || mm > MOST_MEASURE_MM)
    throw new WrongUsage('--body looks like forearm=280mm: a measure, and its length in mm, cm or in.');
  if (along !== undefined && tape !== undefined) throw new WrongUsage('give --girth-at or --body-along, not both.');
  if (along === undefined && tape === undefined)
    throw new WrongUsage(
      `--body ${word} needs its place on the sculpt: ${kind.way === 'girth' ? '--girth-at y=120 for the tape round it' : '--body-along y, with a share as y=0.9 where it is not all of it'}.`,
    );
  const easeMm = number('ease', values.ease, { least: -MOST_EASE_MM, most: MOST_EASE_MM }) ?? 0;
  const at: BodyPlace = along === undefined ? { by: 'tape', tape: tape ?? '' } : placeAlong(along);
  return { measure: { name: kind.name, mm }, scale: { by: 'body', measure: kind.name, easeMm, at } };
}

function placeAlong(word: string): BodyPlace {
  const [axisWord, shareWord = '1', ...rest] = word.split('=');
  const axis = oneOf('body-along', axisWord, ['longest', 'x', 'y', 'z']);
  const share = decimal(shareWord);
  if (axis === undefined || rest.length > 0 || !(share > 0 && share <= MOST_SHARE))
    throw new WrongUsage(`--body-along looks like y or y=0.9, a share over 0 and up to ${MOST_SHARE}.`);
  return { by: 'extent', axis, share };
}
