import type { Finding } from '../../base/finding.ts';
import { formatMm } from '../../base/format-length.ts';
import type { CoreFit, CoreModel, TightestPlace } from '../../model/clearance.ts';

/** What is to be said of a core from a model file. */
export function coreModelFindings(fit: CoreFit, core: CoreModel, part: string): readonly Finding[] {
  const { tightest, problem } = fit;
  if (problem !== undefined)
    return [
      {
        code: 'wear/core-file',
        severity: 'warning',
        text: `The core ${core.name} cannot be used, so its room is not measured. ${problem.text}`,
        where: { part },
      },
    ];
  const isOpen: readonly Finding[] =
    (fit.openEdges ?? 0) === 0
      ? []
      : [
          {
            code: 'wear/core-open',
            severity: 'note',
            text: `The file of ${core.name} is not closed: ${fit.openEdges} of its edges have one face only. Which side is inside is told by the nearest face; close the model if a figure looks wrong.`,
            value: fit.openEdges ?? 0,
            where: { part },
          },
        ];
  return tightest === null ? isOpen : [...roomFindings(fit, core, tightest, part), ...isOpen];
}

function roomFindings(
  { stand }: CoreFit,
  { name, roomMm: room = 0 }: CoreModel,
  { clearanceMm, point, triangle }: TightestPlace,
  part: string,
): readonly Finding[] {
  const text = roomText(stand ?? 'inside', name, clearanceMm, room);
  if (text === null) return [];
  return [
    {
      code:
        stand === 'outside' ? 'wear/core-misses' : stand === 'swallows' ? 'wear/core-larger' : 'wear/core-too-tight',
      severity: 'warning',
      text,
      value: clearanceMm,
      limit: room,
      unit: 'mm',
      where: { part, triangles: [triangle], point: [point.x, point.y, point.z] },
    },
  ];
}

function roomText(stand: NonNullable<CoreFit['stand']>, name: string, mm: number, room: number): string | null {
  switch (stand) {
    case 'outside':
      return `${name} stands outside of the foam, ${formatMm(mm)} off it: check its place, its turn and its unit.`;
    case 'swallows':
      return `${name} is larger than the part: all of the foam lies within it. Check its unit and the size of the part.`;
    case 'crosses':
      return mm < 0
        ? `${name} does not fit: at the worst place it stands ${formatMm(-mm)} deep in the foam, so make the part larger, move the core, or take thinner foam.`
        : `${name} does not fit: it runs into the foam, so make the part larger, move the core, or take thinner foam.`;
    case 'inside':
      return mm >= room
        ? null
        : `${name} has ${formatMm(mm)} of room at the tightest place, less than the ${formatMm(room)} wanted.`;
  }
}
