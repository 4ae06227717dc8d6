import type { SampleModel } from './model-builder.ts';

/** The model as OBJ: vertices in their order, then the faces under the name of their panel. */
export function objText(model: SampleModel): string {
  const lines = ['# Lengths in mm, y up, front towards +z.', `o ${model.name}`];
  for (const { x, y, z } of model.vertices) lines.push(`v ${x} ${y} ${z}`);
  let panel = '';
  for (const face of model.faces) {
    if (face.panel !== panel) lines.push(`g ${(panel = face.panel)}`);
    lines.push(`f ${face.corners.map((v) => v + 1).join(' ')}`);
  }
  return `${lines.join('\n')}\n`;
}

/** The seam file: pairs of vertices counted from 0 in the order of the OBJ, ten to a line. */
export function seamText(model: SampleModel): string {
  const rows: string[] = [];
  for (let i = 0; i < model.seams.length; i += 10) {
    rows.push(
      model.seams
        .slice(i, i + 10)
        .map(([a, b]) => `[${a},${b}]`)
        .join(','),
    );
  }
  return `{"version":1,"edges":[\n${rows.join(',\n')}\n]}\n`;
}
