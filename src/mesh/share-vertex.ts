/** Whether two triangles have a vertex in common; a triangle does with itself. */
export function shareVertex(triangles: Uint32Array, t: number, u: number): boolean {
  for (let i = 3 * t; i < 3 * t + 3; i += 1) {
    const v = triangles[i];
    if (v === triangles[3 * u] || v === triangles[3 * u + 1] || v === triangles[3 * u + 2]) return true;
  }
  return false;
}
