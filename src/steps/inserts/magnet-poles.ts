import type { Finding } from '../../base/finding.ts';
import type { InsertWish } from '../../model/insert.ts';

/** A magnet by the name of its part. */
export interface NamedInsert {
  readonly part: string;
  readonly name: string;
  readonly wish: InsertWish;
}

/** Whether magnets that hold each other show different poles, and each has just one other half. */
export function poleFindings(inserts: readonly NamedInsert[]): readonly Finding[] {
  const pairs = new Map<string, NamedInsert[]>();
  for (const one of inserts) {
    const { kind, pair } = one.wish;
    if (kind !== 'magnet' || pair === undefined) continue;
    pairs.set(pair, [...(pairs.get(pair) ?? []), one]);
  }
  return [...pairs].flatMap(([pair, list]): Finding[] => {
    const where = { part: list[0].part };
    const names = list.map(({ name }) => name).join(' and ');
    if (list.length !== 2)
      return [
        {
          code: 'insert/no-pair',
          severity: 'warning',
          text:
            list.length === 1
              ? `${names} has no other half: give the magnet that it holds the word ${pair} as well.`
              : `${list.length} magnets have the word ${pair}: two hold each other, give each pair a word of its own.`,
          where,
        },
      ];
    const [a, b] = list.map(({ wish }) => wish.pole);
    if (a === undefined || b === undefined || a !== b) return [];
    return [
      {
        code: 'insert/same-poles',
        severity: 'error',
        text: `${names} both show their ${a} pole and push each other away: turn one over.`,
        where,
      },
    ];
  });
}
