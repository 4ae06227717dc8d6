/** Lines of words in columns: the first to the left, figures to the right. */
export function textTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((word, i) => Math.max(word.length, ...rows.map((row) => (row[i] ?? '').length)));
  const line = (row: readonly string[]): string =>
    widths
      .map((width, i) => (i === 0 ? (row[i] ?? '').padEnd(width) : (row[i] ?? '').padStart(width)))
      .join('  ')
      .trimEnd();
  return [line(head), widths.map((width) => '-'.repeat(width)).join('  '), ...rows.map(line)].join('\n') + '\n';
}
