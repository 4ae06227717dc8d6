/**
 * A dome as a binary STL or an OBJ of about `triangles` triangles, mm, with eight panels parted along meridians: a helm's crown as a dense
 * sculpt would have it. A soft wave keeps it from being a perfect sphere.
 */
export function domeModel(triangles: number): { obj: string; seams: [number, number][]; triangles: number } {
  const columns = 8 * Math.max(1, Math.round(Math.sqrt(triangles / 2 / 16)));
  const rows = Math.max(2, Math.round(triangles / 2 / columns));
  const lines: string[] = ['# dome for benchmarks, mm, z up', 'v 0 0 110'];
  const at = (row: number, column: number): number => (row === 0 ? 0 : 1 + (row - 1) * columns + (column % columns));
  for (let row = 1; row <= rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const polar = (0.5 * Math.PI * row) / rows;
      const turn = (2 * Math.PI * column) / columns;
      const radius = 110 * (1 + 0.02 * Math.sin(4 * turn) * Math.sin(polar) ** 2);
      const [x, y, z] = [Math.sin(polar) * Math.cos(turn), Math.sin(polar) * Math.sin(turn), Math.cos(polar)];
      lines.push(`v ${(radius * x).toFixed(6)} ${(radius * y).toFixed(6)} ${(110 * z).toFixed(6)}`);
    }
  }
  let count = 0;
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const corners = [at(row, column), at(row + 1, column), at(row + 1, column + 1), at(row, column + 1)].map((v) => v + 1);
      if (row === 0) {
        lines.push(`f ${corners[0]} ${corners[1]} ${corners[2]}`);
        count += 1;
      } else {
        lines.push(`f ${corners[0]} ${corners[1]} ${corners[2]}`, `f ${corners[0]} ${corners[2]} ${corners[3]}`);
        count += 2;
      }
    }
  }
  const seams: [number, number][] = [];
  for (let panel = 0; panel < 8; panel += 1) {
    for (let row = 0; row < rows; row += 1) seams.push([at(row, (panel * columns) / 8), at(row + 1, (panel * columns) / 8)]);
  }
  return { obj: `${lines.join('\n')}\n`, seams, triangles: count };
}
