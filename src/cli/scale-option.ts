import type { GivenScale } from '../model/source-model.ts';
import { WrongUsage } from './exit.ts';
import { number, oneOf } from './option-values.ts';

/** `--unit cm`, or `--size longest=320`; nothing where neither is given. @throws WrongUsage */
export function scaleFrom(values: {
  readonly unit?: string | undefined;
  readonly size?: string | undefined;
}): GivenScale | undefined {
  if (values.unit !== undefined && values.size !== undefined) throw new WrongUsage('give --unit or --size, not both.');
  const unit = oneOf('unit', values.unit, ['mm', 'cm', 'm', 'in']);
  if (unit !== undefined) return { by: 'unit', unit };
  if (values.size === undefined) return undefined;
  const [axisWord, mmWord] = values.size.split('=');
  const axis = oneOf('size', axisWord, ['longest', 'x', 'y', 'z'], 'axis=mm with axis ');
  const mm = number('size', mmWord ?? '', { over: 0, most: 1e6 });
  if (axis === undefined || mm === undefined) throw new WrongUsage('--size looks like longest=320 or y=320, in mm.');
  return { by: 'size', axis, mm };
}
