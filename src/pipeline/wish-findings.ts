import { clipPlaces, type Finding, type FindingPlace } from '../base/finding.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { SeamChain } from '../model/seams.ts';
import type { SculptPart } from '../project/project.ts';

type Edge = readonly [number, number];

/**
 * What the maker asked for and cannot have as it is asked: wishes that name nothing, or nothing they could change. Wishes are kept; a seam
 * that was joined for a while finds its own again.
 * @param foam  of the part's layer.
 */
export function wishFindings(
  mesh: Mesh,
  chains: readonly SeamChain[],
  part: Pick<SculptPart, 'id' | 'edgeWishes' | 'flatten' | 'layers' | 'pieceSettings' | 'regions' | 'seamSettings'>,
  foam: FoamSheet,
): readonly Finding[] {
  const chainOfEdge = new ChainsByEdge(mesh, chains);
  const found = [
    ...part.edgeWishes.flatMap((wish) => edgeWishFindings(mesh, chainOfEdge, wish, part.flatten.seamPrice)),
    ...part.seamSettings.flatMap(({ edge }) =>
      edgeFinding(mesh, chainOfEdge.at(edge), edge, 'What was said of the seam'),
    ),
    ...faceFindings(mesh, part),
    ...shrinkageFindings(part, foam),
  ];
  return found.map((finding) => ({ ...finding, where: { part: part.id, ...finding.where } }));
}

/** Which chain runs along an edge given in file numbers: `none` where it is no seam, `unknown` where the sculpt has no such edge. */
class ChainsByEdge {
  readonly #mesh: Mesh;
  readonly #chains: readonly SeamChain[];
  readonly #chainOf = new Map<number, number>();

  constructor(mesh: Mesh, chains: readonly SeamChain[]) {
    this.#mesh = mesh;
    this.#chains = chains;
    const topology = topologyOf(mesh);
    chains.forEach(({ vertices }, i) => {
      for (let j = 1; j < vertices.length; j += 1) {
        this.#chainOf.set(topology.edgeBetween(vertices[j - 1], vertices[j]), i);
      }
    });
  }

  at(edge: Edge): SeamChain | 'none' | 'unknown' {
    const [v, w] = meshEdge(this.#mesh, edge);
    const index = v < 0 || w < 0 ? -1 : topologyOf(this.#mesh).edgeBetween(v, w);
    if (index < 0) return 'unknown';
    const chain = this.#chainOf.get(index);
    return chain === undefined ? 'none' : this.#chains[chain];
  }
}

const meshEdge = (mesh: Mesh, [a, b]: Edge): Edge => [mesh.vertexOfFile[a] ?? -1, mesh.vertexOfFile[b] ?? -1];

/** An edge that what is said of it cannot be about. */
function edgeFinding(mesh: Mesh, chain: SeamChain | 'none' | 'unknown', edge: Edge, said: string): readonly Finding[] {
  if (chain === 'unknown') {
    return [
      {
        code: 'wish/no-such-edge',
        severity: 'warning',
        text: `${said} through corners ${edge[0]} and ${edge[1]} of the file is about no edge of this sculpt and does nothing: say it anew of the edge you mean.`,
        where: {},
      },
    ];
  }
  if (chain !== 'none') return [];
  return [
    {
      code: 'wish/no-seam',
      severity: 'note',
      text: `${said} through corners ${edge[0]} and ${edge[1]} of the file does nothing now, because the foam is not parted there: it holds again once it is.`,
      where: { edges: [meshEdge(mesh, edge)] },
    },
  ];
}

function edgeWishFindings(
  mesh: Mesh,
  chains: ChainsByEdge,
  { edge, holdLength = false, straight = false }: SculptPart['edgeWishes'][number],
  seamPrice: number,
): readonly Finding[] {
  if (!holdLength && !straight) return [];
  const chain = chains.at(edge);
  const lost = edgeFinding(mesh, chain, edge, 'The wish for the edge');
  if (chain === 'none' || chain === 'unknown') return lost;
  const where: FindingPlace = {
    seam: chain.id,
    edges: clipPlaces(Array.from(chain.vertices.subarray(1), (v, i) => [chain.vertices[i], v] as const)),
  };
  const name = chain.kind === 'open' ? 'An open edge' : `Seam ${chain.letter}`;
  const findings: Finding[] = [];
  if (straight && chain.closed) {
    findings.push({
      code: 'wish/ring-straight',
      severity: 'warning',
      text: `${name} that closes in a ring cannot be straight: part the foam across it first, or let it curve.`,
      where,
    });
  }
  if (holdLength && seamPrice === 0) {
    findings.push({
      code: 'wish/nothing-holds',
      severity: 'warning',
      text: `${name} is to hold its length, but lengths have no price now and nothing holds it: move “seam lengths against stretch” to the right.`,
      where,
    });
  }
  return findings;
}

/** Areas and pieces named by polygons that are not there. */
function faceFindings(
  mesh: Mesh,
  { regions, pieceSettings }: Pick<SculptPart, 'regions' | 'pieceSettings'>,
): readonly Finding[] {
  if (regions.length === 0 && pieceSettings.length === 0) return [];
  const known = new Set(mesh.faceOfTriangle);
  const findings: Finding[] = [];
  for (const { name, faces } of regions) {
    const missing = faces.filter((face) => !known.has(face)).length;
    if (missing === 0) continue;
    const all = missing === faces.length;
    findings.push({
      code: 'wish/no-such-area',
      severity: 'warning',
      text: `${all ? 'None' : `Of ${faces.length} faces ${missing}`} of the area “${name}” ${all || missing === 1 ? 'is' : 'are'} on this sculpt${all ? ': remove it, or mark it anew' : ', and the rest is taken for it: mark it anew if it has moved'}.`,
      where: {},
    });
  }
  for (const { face } of pieceSettings) {
    if (known.has(face)) continue;
    findings.push({
      code: 'wish/no-such-piece',
      severity: 'warning',
      text: `What was said of the piece with face ${face} of the file is about no piece of this sculpt and does nothing: say it anew of the piece you mean.`,
      where: {},
    });
  }
  return findings;
}

function shrinkageFindings({ layers }: Pick<SculptPart, 'layers'>, foam: FoamSheet): readonly Finding[] {
  if (foam.shrinkage !== undefined || !layers.some(({ allowForShrinkage }) => allowForShrinkage)) return [];
  return [
    {
      code: 'wish/shrinkage-unknown',
      severity: 'warning',
      text: `Pieces are to be cut larger for shrinkage, but nobody has measured what ${foam.name} loses, so they are not: warm a square of 100 mm and type what is left.`,
      where: {},
    },
  ];
}
