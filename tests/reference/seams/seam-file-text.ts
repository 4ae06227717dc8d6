/** A seam file with ten edges on a line, so that a change can be read as a difference. */
export function seamFileText(edges: readonly (readonly [number, number])[]): string {
  const rows: string[] = [];
  for (let i = 0; i < edges.length; i += 10) {
    rows.push(
      edges
        .slice(i, i + 10)
        .map(([v, w]) => `[${v},${w}]`)
        .join(','),
    );
  }
  return `{"version":1,"edges":[\n${rows.join(',\n')}\n]}\n`;
}
