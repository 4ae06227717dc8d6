/** A ball of 100 mm whose surface is wavy, made of rows round its axis; every triangle of it is given once. */
export function wavyBall(wanted: number): {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  /** As a file. */
  obj(): string;
} {
  const rows = Math.round(Math.sqrt(wanted / 4));
  const columns = 2 * rows;
  const positions = new Float64Array(3 * (rows + 1) * columns);
  for (let row = 0; row <= rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const [polar, turn] = [(Math.PI * row) / rows, (2 * Math.PI * column) / columns];
      const radius = 100 * (1 + 0.05 * Math.sin(9 * polar) * Math.sin(7 * turn));
      const at = [Math.sin(polar) * Math.cos(turn), Math.sin(polar) * Math.sin(turn), Math.cos(polar)];
      positions.set(
        at.map((x) => radius * x),
        3 * (row * columns + column),
      );
    }
  }
  const triangles = new Uint32Array(6 * rows * columns);
  for (let row = 0, next = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1, next += 6) {
      const [a, b] = [row * columns + column, row * columns + ((column + 1) % columns)];
      triangles.set([a, a + columns, b + columns, a, b + columns, b], next);
    }
  }
  return { positions, triangles, obj: () => roundedObj(positions, triangles) };
}

/** Places to a micrometre. */
function roundedObj(positions: Float64Array, triangles: Uint32Array): string {
  const lines: string[] = [];
  for (let i = 0; i < positions.length; i += 3)
    lines.push(`v ${positions[i].toFixed(3)} ${positions[i + 1].toFixed(3)} ${positions[i + 2].toFixed(3)}`);
  for (let i = 0; i < triangles.length; i += 3)
    lines.push(`f ${triangles[i] + 1} ${triangles[i + 1] + 1} ${triangles[i + 2] + 1}`);
  return `${lines.join('\n')}\n`;
}
