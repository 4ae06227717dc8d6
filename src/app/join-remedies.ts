import type { Finding } from '../base/finding.ts';
import { partId } from '../base/ids.ts';
import { addJoin } from '../project/joins-commands.ts';
import type { Project } from '../project/project.ts';
import { PART_JOIN_WORDS } from './part-join-words.ts';
import { nameOfPart } from './part-names.ts';
import type { Remedy } from './remedies.ts';

/** What two parts that are in each other may have to do with each other: a hole with the usual room either way, or a seat. */
export function joinRemedies({ code, where }: Finding, project: Project | null): readonly Remedy[] {
  const { part: ownId = '', otherPart: otherId = '' } = where;
  const [own, other] = [nameOfPart(project, ownId), nameOfPart(project, otherId)];
  if (code !== 'assembly/runs-into' || own === null || other === null) return [];
  const [a, b] = [partId(ownId), partId(otherId)];
  const words = PART_JOIN_WORDS;
  return [
    { label: words.hole(own, other), command: addJoin({ kind: 'hole', part: a, through: b }) },
    { label: words.hole(other, own), command: addJoin({ kind: 'hole', part: b, through: a }) },
    { label: words.seat(own, other), command: addJoin({ kind: 'seat', part: a, on: b }) },
  ];
}
