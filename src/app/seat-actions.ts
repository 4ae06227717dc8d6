import type { PartId } from '../base/ids.ts';
import { outwardOf, setOn, setPartOn } from '../project/set-on-sculpt.ts';
import { PART_WORDS } from './part-words.ts';
import type { Verb, WindowActions } from './verb.ts';
import type { Workbench } from './workbench.ts';

/** Where the part on the bench stands in the prop: the only sculpt stands as it was modelled. */
const ALONE = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];

/** What sets a chosen part on the sculpt, in the middle of the picture. */
export function seatVerbs(bench: Workbench, actions: WindowActions, id: PartId): Verb[] {
  const { part } = bench;
  const form = bench.bench.plain.find((view) => view.part === id)?.form;
  const isPlain = bench.project?.plain?.some((one) => one.id === id) === true;
  if (part === null || !isPlain || form == null || bench.bench.sculpt?.sized !== true) return [];
  const label = PART_WORDS.fields.setOn(part.name);
  return [{ id: 'set-on', label, key: 'k', isNear: true, run: () => setOnSculpt(bench, actions, id, form) }];
}

/** Looked at where it is to lie, it lies as one looks, flat on the surface there, and says so: its outline is drawn on the piece below it. */
function setOnSculpt(bench: Workbench, actions: WindowActions, id: PartId, form: ArrayLike<number>): void {
  const { project, part } = bench;
  const { sculpt } = bench.bench;
  const place = actions.middle();
  const own = project?.plain?.find((one) => one.id === id);
  if (project === null || part === null || sculpt === null || own === undefined) return;
  if (place === null) return bench.setNotice({ tone: 'problem', text: PART_WORDS.fields.notThere });
  const corners = [0, 1, 2].map((i) => sculpt.triangles[3 * place.triangle + i]);
  const outward = outwardOf(sculpt.positions, corners);
  const ground = project.parts.length < 2 ? ALONE : part.transform;
  const standing = { point: place.point, outward, up: place.facing.up };
  bench.run(setPartOn(id, part.id, setOn(own.transform, form, standing, ground)));
  bench.say(PART_WORDS.fields.isOn(part.name));
}
