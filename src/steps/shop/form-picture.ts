import type { Mesh } from '../../mesh/mesh.ts';
import { boxOfPoints3 } from '../../mesh/measure.ts';
import type { Drawing } from '../../model/template.ts';
import { seenLines, type PictureView } from './hidden-lines.ts';
import { joinedLines } from './joined-lines.ts';
import { onPaper, pointsOnPaper } from './on-paper.ts';
import { bodyScene } from './solid-scene.ts';
import { viewFrom } from './step-picture.ts';

/** White round it, mm. */
const EDGE_MM = 2;

/** What is so many times as long as it is wide is laid down, what is so many times flatter than wide is looked at from above. */
const LONG = 2;
const FLAT = 4;

/** A finished part by itself, its creases and where its surface turns away. Lower left corner at 0, mm. */
export function formPicture(form: Pick<Mesh, 'positions' | 'triangles'>, widthMm: number, heightMm: number): Drawing {
  const scene = bodyScene(form);
  const view = viewOf(form.positions);
  const paper = onPaper(scene, view, { widthMm, heightMm, edgeMm: EDGE_MM });
  return {
    strokes: joinedLines(seenLines(scene, view)).map((points) => ({
      role: 'map',
      points: pointsOnPaper(paper, points),
      closed: false,
    })),
    words: [],
  };
}

/** From the front, a little from above and from one side; z is up in a part's own frame. */
function viewOf(positions: Float64Array): PictureView {
  const { min, max } = boxOfPoints3(positions);
  const [x, y, z] = [max.x - min.x, max.y - min.y, max.z - min.z];
  if (z > LONG * Math.max(x, y)) return viewFrom('x', 60, 24);
  return viewFrom('z', 35, FLAT * z < Math.max(x, y) ? 60 : 24);
}
