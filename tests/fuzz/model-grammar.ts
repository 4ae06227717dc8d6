import { HOSTILE_FIGURES, HOSTILE_NAMES } from './hostile-values.ts';
import { below, bytesOf, oneOf, type Random } from './target.ts';

/** A coordinate: mostly one of a few, so that corners meet, lie on lines and come together. */
function coordinate(random: Random): number {
  const kind = random();
  if (kind < 0.6) return below(random, 3);
  if (kind < 0.8) return (random() - 0.5) * 10 ** below(random, 6);
  if (kind < 0.9) return below(random, 3) + (random() - 0.5) * 10 ** -below(random, 16);
  return oneOf(random, [1e12, -1e12, 1e-30, 1e-160, 1e-300, 1e9, 5e-324, 0, -0, 1e11, 999999999999]);
}

const figure = (random: Random): string =>
  random() < 0.01 ? oneOf(random, HOSTILE_FIGURES) : String(coordinate(random));

/** An OBJ that is whole in nearly all cases, of few corners and faces in any order. */
export function wildObj(random: Random): Uint8Array {
  const lines: string[] = [];
  const points = 3 + below(random, random() < 0.9 ? 12 : 200);
  for (let i = 0; i < points; i += 1) {
    const more = random() < 0.1 ? ` ${figure(random)} ${figure(random)} ${figure(random)}` : '';
    lines.push(`v ${figure(random)} ${figure(random)} ${figure(random)}${more}`);
  }
  const faces = 1 + below(random, random() < 0.9 ? 12 : 300);
  for (let i = 0; i < faces; i += 1) {
    const count = random() < 0.7 ? 3 : 3 + below(random, random() < 0.95 ? 6 : 60);
    const corners = Array.from({ length: count }, () => {
      const number = random() < 0.2 ? -1 - below(random, points) : 1 + below(random, points);
      return random() < 0.9
        ? `${number}`
        : `${number}${oneOf(random, ['/1', '//1', '/1/1', '/', '/-1/', '#', '\\\n'])}`;
    });
    lines.push(`f ${corners.join(random() < 0.95 ? ' ' : '\t ')}`);
    if (random() < 0.1)
      lines.push(`${oneOf(random, ['o', 'g', 'usemtl', 's', 'l', 'mg', 'curv'])} ${oneOf(random, HOSTILE_NAMES)}`);
  }
  if (random() < 0.1) lines.sort(() => random() - 0.5);
  return bytesOf(lines.join(random() < 0.9 ? '\n' : '\r\n'));
}

/** An ASCII STL of few facets. */
export function wildAsciiStl(random: Random): Uint8Array {
  const lines = [`solid ${oneOf(random, HOSTILE_NAMES)}`];
  const facets = 1 + below(random, random() < 0.9 ? 10 : 200);
  for (let i = 0; i < facets; i += 1) {
    lines.push(`facet normal ${figure(random)} ${figure(random)} ${figure(random)}`, 'outer loop');
    const corners = random() < 0.99 ? 3 : below(random, 5);
    for (let k = 0; k < corners; k += 1) lines.push(`vertex ${figure(random)} ${figure(random)} ${figure(random)}`);
    lines.push('endloop', 'endfacet');
    if (random() < 0.05) lines.push('endsolid', `solid ${oneOf(random, HOSTILE_NAMES)}`);
  }
  if (random() < 0.9) lines.push('endsolid');
  return bytesOf(lines.join('\n'));
}

/** A binary STL whose count is right in most cases. */
export function wildBinaryStl(random: Random): Uint8Array {
  const facets = below(random, random() < 0.9 ? 12 : 400);
  const view = new DataView(new ArrayBuffer(84 + 50 * facets));
  if (random() < 0.2) for (let i = 0; i < 80; i += 1) view.setUint8(i, 'solid facet '.charCodeAt(i % 12));
  view.setUint32(
    80,
    random() < 0.9
      ? facets
      : oneOf(random, [0, facets + 1, facets - 1, 0xffffffff, 0x7fffffff, 4e6, 4e6 + 1, 2 * facets]),
    true,
  );
  for (let i = 0; i < facets; i += 1)
    for (let k = 0; k < 12; k += 1) {
      const at = 84 + 50 * i + 4 * k;
      if (random() < 0.005)
        view.setUint32(at, oneOf(random, [0x7f800000, 0xff800000, 0x7fc00000, 1, 0x7f7fffff, 0x80000000]), true);
      else view.setFloat32(at, coordinate(random), true);
    }
  return new Uint8Array(view.buffer);
}
