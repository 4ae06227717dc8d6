import type { Mesh } from '../../src/mesh/mesh.ts';

/** The mesh as OBJ, written to the last digit. */
export function objText({ positions, triangles }: Mesh): string {
  const lines: string[] = [];
  for (let i = 0; i < positions.length; i += 3) lines.push(`v ${positions.slice(i, i + 3).join(' ')}`);
  for (let i = 0; i < triangles.length; i += 3) {
    lines.push(`f ${triangles[i] + 1} ${triangles[i + 1] + 1} ${triangles[i + 2] + 1}`);
  }
  return `${lines.join('\n')}\n`;
}
