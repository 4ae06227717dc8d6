/** Facets round and from rim to crown. */
const ROUND = 20;
const RINGS = 6;

/** Half axes of the helmet in its own numbers, which are centimetres but say so nowhere: across, up, from nape to brow. */
const HALF_AXES = [9, 12, 11] as const;

/** Height of the helmet once its unit is said, mm. */
export const HELMET_HEIGHT_MM = 120;

/** A sculpt of one's own: half an egg, open below, without a unit and without a seam. */
export function halfHelmet(): string {
  const [across, up, along] = HALF_AXES;
  const corners = Array.from({ length: RINGS * ROUND }, (_, i) => {
    const round = (2 * Math.PI * (i % ROUND)) / ROUND;
    const rise = (Math.PI * Math.floor(i / ROUND)) / (2 * RINGS);
    const [x, y, z] = [Math.cos(rise) * Math.cos(round), Math.sin(rise), Math.cos(rise) * Math.sin(round)];
    return `v ${(across * x).toFixed(4)} ${(up * y).toFixed(4)} ${(along * z).toFixed(4)}`;
  });
  const at = (ring: number, i: number): number => ring * ROUND + (i % ROUND) + 1;
  const walls = Array.from({ length: (RINGS - 1) * ROUND }, (_, i) => {
    const ring = Math.floor(i / ROUND);
    const [a, b, c, d] = [at(ring, i), at(ring + 1, i), at(ring + 1, i + 1), at(ring, i + 1)];
    return `f ${a} ${b} ${c}\nf ${a} ${c} ${d}`;
  });
  const crown = RINGS * ROUND + 1;
  const caps = Array.from({ length: ROUND }, (_, i) => `f ${at(RINGS - 1, i)} ${crown} ${at(RINGS - 1, i + 1)}`);
  return ['o half_helmet', ...corners, `v 0 ${up} 0`, ...walls, ...caps, ''].join('\n');
}
