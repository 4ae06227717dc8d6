/** What was asked for on the command line. */
export interface BenchWords<Table extends string> {
  readonly tables: ReadonlySet<Table>;
  /** Pairs of runs for each time, >= 1. */
  readonly rounds: number;
  /** Triangles of the largest patch that is timed. */
  readonly most: number;
}

/** Seven pairs: enough that one disturbed run moves the median little. */
const ROUNDS = 7;

/**
 * Reads words such as `times rounds=3 most=20000`.
 * @param known  names of all tables
 * @param usual  those that are made when none is named
 * @throws RangeError for a word that means nothing
 */
export function readBenchWords<Table extends string>(
  words: readonly string[],
  known: readonly Table[],
  usual: readonly Table[],
): BenchWords<Table> {
  const tables = new Set<Table>();
  let rounds = ROUNDS;
  let most = Infinity;
  for (const word of words) {
    const table = known.find((name) => name === word);
    const [, name, figure] = /^(rounds|most)=(\d+)$/.exec(word) ?? [];
    if (table !== undefined) tables.add(table);
    else if (name === 'rounds' && Number(figure) > 0) rounds = Number(figure);
    else if (name === 'most') most = Number(figure);
    else throw new RangeError(`"${word}": say any of ${known.join(', ')}, rounds=${ROUNDS}, most=100000`);
  }
  return { tables: tables.size > 0 ? tables : new Set(usual), rounds, most };
}
