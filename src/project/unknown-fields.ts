import type { Finding } from '../base/finding.ts';

/** Fields that are named at most; of the others it is told how many. */
const MOST_NAMED = 3;

/**
 * Fields of a JSON text that a reader has left out, by their paths: `parts.0.seams.colour`. Lists count from 0.
 * @param raw   the text as it was.
 * @param read  what the reader made of it.
 */
export function unknownFields(raw: unknown, read: unknown, path = ''): readonly string[] {
  if (!isObject(raw) || !isObject(read)) return [];
  return Object.keys(raw).flatMap((key) => {
    const here = path === '' ? key : `${path}.${key}`;
    return Object.hasOwn(read, key) ? unknownFields(raw[key], read[key], here) : [here];
  });
}

/** Tells of fields that are left out; nothing where there are none. */
export function unknownFieldsTold(fields: readonly string[], fileName: string): readonly Finding[] {
  if (fields.length === 0) return [];
  const named = fields.slice(0, MOST_NAMED).join(', ');
  const rest = fields.length - MOST_NAMED;
  const text =
    rest > 0
      ? `${fileName} holds fields that are not known here: ${named} and ${rest} more; they are left out when it is saved.`
      : `${fileName} holds fields that are not known here: ${named}; they are left out when it is saved.`;
  return [{ code: 'project/unknown-fields', severity: 'warning', text, where: {} }];
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;
