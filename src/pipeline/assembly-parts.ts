import type { PartId } from '../base/ids.ts';
import type { Matrix4 } from '../geom/matrix4.ts';
import { openRims } from '../mesh/open-rims.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { plainMesh } from '../mesh/plain-mesh.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import { rulesOf } from '../model/foam-settings.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { PlainWork } from '../model/plain-piece.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import type { PlainPart } from '../project/plain-part.ts';
import type { SculptPart } from '../project/project.ts';
import type { MeetingHost } from '../steps/assembly/meeting-host.ts';
import { hostOfFlat, hostOfPatches } from '../steps/assembly/plain-hosts.ts';
import type { CutSculpt } from './outcome.ts';
import { shapeInFoam } from './plain/shape-part.ts';

/** A sheet of a sculpt's wall with the pieces it was parted into. */
export interface AssemblySheet {
  readonly cut: CutSculpt;
  readonly pieces: readonly FoamPiece[];
  readonly foam: FoamSheet;
}

/** A sculpt whose pieces are made. */
export interface AssemblySculpt {
  readonly part: Pick<SculptPart, 'id' | 'name' | 'transform' | 'copies'>;
  /** The outermost sheet of the wall first, then those that are laid on it. */
  readonly sheets: readonly AssemblySheet[];
  /** How many of them are the wall. */
  readonly wallSheets: number;
}

/** A part that no sculpt is parted for, as it is made. */
export interface AssemblyPlain {
  readonly part: PlainPart;
  readonly work: PlainWork;
  /** Its own, the usual one first. */
  readonly foams: readonly FoamSheet[];
}

/** A part where it stands, whatever it is. Forms and surfaces are in its own frame, mm. */
export interface StandingPart {
  readonly id: PartId;
  readonly name: string;
  readonly matrix: Matrix4;
  /** How many of it the prop has; it is held against others where the first stands. */
  readonly copies: number;
  /** Its foam, closed; null where it has no form. */
  readonly body: Mesh | null;
  /** Its outside, without the hollow in it: what something is deep in. */
  readonly outside: Mesh | null;
  /** Its flat pieces by the surfaces they become; empty where lines cannot be brought onto them. */
  readonly hosts: readonly MeetingHost[];
  readonly bevelLimitDeg: number;
  /** The part it lies on by what it is: strips on a sculpt, what is let in. */
  readonly liesOn: PartId | null;
}

export function standingSculpt({ part, sheets, wallSheets }: AssemblySculpt): StandingPart {
  const [seen] = sheets;
  const wall = sheets.slice(0, wallSheets);
  const { mesh } = seen.cut;
  const inner = wall.filter(({ cut }) => cut.mesh === mesh).at(-1) ?? seen;
  const { facePositions } = seen.cut.shell;
  return {
    id: part.id,
    name: part.name,
    matrix: part.transform,
    copies: part.copies,
    body: wallBody(mesh, facePositions, inner.cut.shell.backPositions),
    outside: { ...mesh, positions: facePositions },
    hosts: sheets.flatMap(hostsOfSheet),
    bevelLimitDeg: rulesOf(seen.foam).bevelLimitDeg,
    liesOn: null,
  };
}

/** Both skins of a wall and what closes it along open edges. */
function wallBody(mesh: Mesh, face: Float64Array, back: Float64Array): Mesh {
  const { triangles } = mesh;
  const count = face.length / 3;
  const positions = new Float64Array(2 * face.length);
  positions.set(face);
  positions.set(back, face.length);
  const all: number[] = [...triangles];
  for (let t = 0; t < triangles.length; t += 3)
    all.push(triangles[t] + count, triangles[t + 2] + count, triangles[t + 1] + count);
  for (const rim of openRims(triangles, topologyOf(mesh)))
    rim.forEach((a, i) => {
      const b = rim[(i + 1) % rim.length];
      all.push(b, a, a + count, b, a + count, b + count);
    });
  return plainMesh(positions, Uint32Array.from(all));
}

/** One for each thickness: pieces of another foam have surfaces of their own. */
function hostsOfSheet({ cut, pieces }: AssemblySheet): readonly MeetingHost[] {
  const { mesh, patches, shells } = cut;
  const { triangles } = mesh;
  const topology = topologyOf(mesh);
  const groups = new Map<ShellLayer, FoamPiece[]>();
  for (const piece of pieces) {
    const shell = shells[piece.patch];
    groups.set(shell, [...(groups.get(shell) ?? []), piece]);
  }
  return [...groups].map(([{ facePositions, neutralPositions, backPositions }, own]): MeetingHost => {
    const [face, neutral, back] = [facePositions, neutralPositions, backPositions].map((positions) => ({
      positions,
      triangles,
      topology,
    }));
    return {
      shell: { face, neutral, back },
      pieces: own.map(({ id, patch, uv }) => ({ id, alike: 1, ground: { patch: patches[patch], uv } })),
    };
  });
}

export function standingPlain({ part, work, foams }: AssemblyPlain): StandingPart {
  return {
    id: part.id,
    name: part.name,
    matrix: part.transform,
    copies: part.copies,
    body: work.form,
    outside: work.form,
    hosts: hostsOfPlain(part, work, foams[0]),
    bevelLimitDeg: rulesOf(foams[0]).bevelLimitDeg,
    liesOn: hostOf(part),
  };
}

/** The part that a part lies on by what it is. */
const hostOf = (part: PlainPart): PartId | null => ('on' in part ? part.on : 'into' in part ? part.into : null);

function hostsOfPlain(part: PlainPart, work: PlainWork, foam: FoamSheet): readonly MeetingHost[] {
  const idOf = (key: string): string => `${part.id}/${key}`;
  const [first] = work.pieces;
  if (part.kind === 'shape') {
    const made = shapeInFoam(part, foam);
    if (!made.ok) return [];
    const { patches, pieces, solid } = made.value;
    if (patches.length > 0 && solid === null) {
      // Pieces of work stand in the order of those of the shape.
      const patched = pieces.map(({ name, quantity }, i) => ({
        id: idOf(work.pieces[i].key),
        quantity,
        patches: patches.filter(({ piece }) => piece === name),
      }));
      const host = hostOfPatches(
        patched.filter((one) => one.patches.length > 0),
        first.thicknessMm,
        first.drawnAt,
      );
      return host === null ? [] : [host];
    }
  }
  const isOwnForm = work.pieces.length === 1 && first.bend.kind === 'flat' && first.quantity === 1;
  if (!isOwnForm || (part.kind !== 'shape' && part.kind !== 'artwork')) return [];
  const host = hostOfFlat(idOf(first.key), first);
  return host === null ? [] : [host];
}
