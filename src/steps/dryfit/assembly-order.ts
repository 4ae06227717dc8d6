/** A piece as far as putting together goes. */
export interface AssemblyPiece {
  readonly id: string;
  readonly areaMm2: number;
}

/** A seam between two pieces; a piece that meets itself is told twice and counts for nothing. */
export interface AssemblySeam {
  readonly pieces: readonly string[];
  readonly lengthMm: number;
}

/**
 * In which order pieces are put together: the largest first, then always the piece that shares the greatest length of seams with those in
 * place, the larger of two alike. Where no piece is joined to those in place, the largest left begins anew.
 * @returns for each piece its place in the order, from 0.
 */
export function assemblyOrder(pieces: readonly AssemblyPiece[], seams: readonly AssemblySeam[]): readonly number[] {
  const places = pieces.map(() => -1);
  const held = pieces.map(() => 0);
  const indexOf = new Map(pieces.map(({ id }, i) => [id, i]));
  const joined = pieces.map((): { to: number; lengthMm: number }[] => []);
  for (const { pieces: ids, lengthMm } of seams) {
    const [a, b] = ids.map((id) => indexOf.get(id));
    if (a === undefined || b === undefined || a === b) continue;
    joined[a].push({ to: b, lengthMm });
    joined[b].push({ to: a, lengthMm });
  }
  for (let place = 0; place < pieces.length; place += 1) {
    let next = -1;
    pieces.forEach(({ areaMm2 }, i) => {
      if (places[i] >= 0) return;
      const isBetter = next < 0 || held[i] > held[next] || (held[i] === held[next] && areaMm2 > pieces[next].areaMm2);
      if (isBetter) next = i;
    });
    places[next] = place;
    for (const { to, lengthMm } of joined[next]) held[to] += lengthMm;
  }
  return places;
}
