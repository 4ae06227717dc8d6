/** A length in a drawing, to a thousandth of a mm and without a negative zero. */
export const mm = (value: number): string => String(Number(value.toFixed(3)) + 0);

/** A drawing in true size on white. @param lines its elements, lengths in mm, y down. */
export const svgInMm = (widthMm: number, heightMm: number, lines: readonly string[]): string =>
  [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(widthMm)}mm" height="${mm(heightMm)}mm" viewBox="0 0 ${mm(widthMm)} ${mm(heightMm)}" font-family="sans-serif">`,
    `<rect width="100%" height="100%" fill="#fff"/>`,
    ...lines,
    '</svg>',
    '',
  ].join('\n');
