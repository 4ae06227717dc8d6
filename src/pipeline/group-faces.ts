import { facesOfGroup } from '../steps/seams/area-border.ts';
import type { SizedSculpt } from './outcome.ts';

/** Polygons of the file in the group, object or material of that name, ascending; none where there is none. */
export function facesOfNamedGroup({ mesh }: SizedSculpt, name: string): readonly number[] {
  const group = mesh.groupNames.indexOf(name);
  return group < 0 ? [] : facesOfGroup(mesh, group);
}
