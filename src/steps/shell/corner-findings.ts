import { clipPlaces, type Finding } from '../../base/finding.ts';
import type { ShellCorner } from '../../model/shell-layer.ts';

/**
 * What the maker must know of corners at which more than three panels meet in no single inner point: where the pieces are trimmed for it, and
 * where that is left to the knife.
 * @param isTrimmed  tells of a vertex of the mesh whether the cut lines of all pieces there end where panels meet.
 */
export function cornerFindings(corners: readonly ShellCorner[], isTrimmed: (vertex: number) => boolean): Finding[] {
  const trimmed = corners.filter(({ vertex }) => isTrimmed(vertex));
  const left = corners.filter(({ vertex }) => !isTrimmed(vertex));
  return [
    ...told(
      'shell/corner-trimmed',
      trimmed,
      (mm) => `the templates are trimmed by up to ${mm} mm there, so cut small corners as drawn.`,
    ),
    ...told('shell/corner-of-many-planes', left, (mm) => `expect to trim up to ${mm} mm on the inside there.`),
  ];
}

function told(code: string, corners: readonly ShellCorner[], then: (mm: string) => string): Finding[] {
  if (corners.length === 0) return [];
  const worst = Math.max(...corners.map(({ missMm }) => missMm));
  return [
    {
      code,
      severity: 'note',
      text: `At ${corners.length} ${corners.length === 1 ? 'corner' : 'corners'} more than three panels meet that no single inner point suits: ${then(String(Math.round(worst * 10) / 10))}`,
      value: worst,
      unit: 'mm',
      where: { vertices: clipPlaces(corners.map(({ vertex }) => vertex)) },
    },
  ];
}
