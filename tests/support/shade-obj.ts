/** Sides, rings of faces and size of the shade, mm. */
export const SHADE = { sides: 8, rings: 6, radiusMm: 60, heightMm: 120 };

/**
 * A lamp shade of our own, mm: an eight-sided tube of six rings, open at both ends, whose two middle rings are a group of the file.
 * Corner `ring * 8 + side`, counted from the bottom; side 0 looks at the viewer.
 */
export function shadeObj(): string {
  const { sides, rings, radiusMm, heightMm } = SHADE;
  const lines = ['# lamp shade'];
  for (let ring = 0; ring <= rings; ring += 1) {
    for (let side = 0; side < sides; side += 1) {
      const angle = (2 * Math.PI * side) / sides;
      const [x, z] = [radiusMm * Math.sin(angle), radiusMm * Math.cos(angle)];
      lines.push(`v ${x.toFixed(6)} ${((ring * heightMm) / rings).toFixed(6)} ${z.toFixed(6)}`);
    }
  }
  for (let ring = 0; ring < rings; ring += 1) {
    if (ring === 2) lines.push('g band');
    if (ring === 4) lines.push('g top');
    for (let side = 0; side < sides; side += 1) {
      const [a, b] = [ring * sides + side + 1, ring * sides + ((side + 1) % sides) + 1];
      lines.push(`f ${a} ${b} ${b + sides} ${a + sides}`);
    }
  }
  return lines.join('\n');
}
