import { clipPlaces, type Finding, type FindingPlace } from '../base/finding.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { EdgeWish, Region } from '../model/flatten-settings.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { PieceSetting } from '../model/foam-settings.ts';
import type { Patch } from '../model/patch.ts';
import type { SeamChain, SeamSetting } from '../model/seams.ts';
import { namedPath } from '../project/path-names.ts';
import type { SculptPart } from '../project/project.ts';

type Edge = readonly [number, number];
/** What an edge of the file is: a seam or open edge, an edge inside the foam, or none of the sculpt's. */
type Found = SeamChain | 'inside' | 'nowhere';

/** Numbers said in one sentence; the rest are counted. */
const MOST_SAID = 5;

/**
 * What the maker asked for and cannot have as it is asked: wishes that name nothing, or nothing they could change. They are kept all the
 * same, because a seam that was joined for a while finds its own again.
 * @param foam    of the part's layer.
 * @param placed  the edge of the mesh at which lies what an edge of the sculpt or a path is named by.
 */
export function wishFindings(
  mesh: Mesh,
  { patches, chains }: { readonly patches: readonly Patch[]; readonly chains: readonly SeamChain[] },
  part: Pick<SculptPart, 'id' | 'edgeWishes' | 'flatten' | 'layers' | 'pieceSettings' | 'regions' | 'seamSettings'>,
  foam: FoamSheet,
  placed: (edge: Edge) => Edge = (edge) => edge,
): readonly Finding[] {
  const { edgeWishes, seamSettings, regions, pieceSettings, flatten, layers } = part;
  const find =
    edgeWishes.length + seamSettings.length === 0 ? () => 'nowhere' as const : edgeFinder(mesh, chains, placed);
  const findings = [
    ...edgeWishFindings(mesh, find, edgeWishes, flatten.seamPrice),
    ...seamSettings.flatMap((setting) => seamSettingFindings(mesh, patches, find(setting.edge), setting)),
    ...faceFindings(mesh, regions, pieceSettings),
    ...shrinkageFindings(layers, foam),
  ];
  return findings.map((finding) => ({ ...finding, where: { part: part.id, ...finding.where } }));
}

/** Tells of an edge given in file numbers what it is. */
function edgeFinder(mesh: Mesh, chains: readonly SeamChain[], placed: (edge: Edge) => Edge): (edge: Edge) => Found {
  const topology = topologyOf(mesh);
  const chainOf = new Map<number, SeamChain>();
  for (const chain of chains) {
    const { vertices } = chain;
    for (let i = 1; i < vertices.length; i += 1) chainOf.set(topology.edgeBetween(vertices[i - 1], vertices[i]), chain);
  }
  return (edge) => {
    const [v, w] = verticesOf(mesh, placed(edge));
    const index = v < 0 || w < 0 ? -1 : topology.edgeBetween(v, w);
    return index < 0 ? 'nowhere' : (chainOf.get(index) ?? 'inside');
  };
}

const verticesOf = (mesh: Mesh, [a, b]: Edge): Edge => [mesh.vertexOfFile[a] ?? -1, mesh.vertexOfFile[b] ?? -1];

/** What the document names, an edge by its corners or a path by its number, behind `through`. */
function inFile(edge: Edge): string {
  const path = namedPath(edge);
  return path === null ? `corners ${edge[0]} and ${edge[1]} of the file (counted from 0)` : `path ${path + 1}`;
}

function edgeWishFindings(
  mesh: Mesh,
  find: (edge: Edge) => Found,
  wishes: readonly EdgeWish[],
  seamPrice: number,
): readonly Finding[] {
  const ofChain = new Map<SeamChain, EdgeWish[]>();
  const lost: Finding[] = [];
  for (const wish of wishes) {
    const found = find(wish.edge);
    if (typeof found === 'object') ofChain.set(found, [...(ofChain.get(found) ?? []), wish]);
    else if (wish.holdLength === true || wish.straight === true) lost.push(lostWish(mesh, found, wish));
  }
  return [...lost, ...[...ofChain].flatMap(([chain, own]) => chainFindings(chain, own, seamPrice))];
}

function lostWish(mesh: Mesh, found: 'inside' | 'nowhere', { edge, holdLength, straight }: EdgeWish): Finding {
  const asks = [holdLength === true ? 'hold its length' : '', straight === true ? 'be straight' : ''];
  const said = `The edge ${namedPath(edge) === null ? 'between' : 'along'} ${inFile(edge)} is to ${asks.filter((ask) => ask !== '').join(' and ')}`;
  const wish = { about: 'edge', edges: [edge], asks: 'anything' } as const;
  if (found === 'nowhere') {
    return {
      code: 'wish/no-such-edge',
      severity: 'warning',
      text: `${said}, but the sculpt has no such edge: forget the wish, or say it of the edge you mean.`,
      where: cornersThere(mesh, edge),
      wish,
    };
  }
  return {
    code: 'wish/no-foam-edge',
    severity: 'warning',
    text: `${said}, but the foam has no edge there: part it there, or forget the wish.`,
    where: { edges: [verticesOf(mesh, edge)] },
    wish,
  };
}

/** Those corners of an edge given in file numbers that the sculpt has. */
function cornersThere(mesh: Mesh, edge: Edge): FindingPlace {
  const vertices = verticesOf(mesh, edge).filter((v) => v >= 0);
  return vertices.length === 0 ? {} : { vertices };
}

/** @param wishes  all that are tied to one of the chain's edges: of each question the last word counts. */
function chainFindings(chain: SeamChain, wishes: readonly EdgeWish[], seamPrice: number): readonly Finding[] {
  const { holdLength = false, straight = false } = Object.assign({}, ...wishes) as Partial<EdgeWish>;
  const name = chain.kind === 'open' ? 'The open edge' : `Seam ${chain.letter}`;
  const at = `${name} through ${inFile(wishes[0].edge)}`;
  const where = placeOf(chain);
  const edges = wishes.map(({ edge }) => edge);
  const findings: Finding[] = [];
  if (straight && isRing(chain)) {
    findings.push({
      code: 'wish/straight-ring',
      severity: 'warning',
      text: `${at} is to be straight, but closes in a ring: let a seam run into it from each piece that lies along it, or let it curve.`,
      where,
      wish: { about: 'edge', edges, asks: 'straight' },
    });
  }
  if (holdLength && seamPrice === 0) {
    findings.push({
      code: 'wish/nothing-holds',
      severity: 'warning',
      text: `${at} is to hold its length, but seam lengths have no price, so nothing holds it: give “seam lengths against stretch” more than 0, or forget the wish.`,
      where,
      wish: { about: 'edge', edges, asks: 'holdLength' },
    });
  }
  return findings;
}

/** True where a piece has the chain all round: one side ends where it begins. */
const isRing = ({ closed, sides }: SeamChain): boolean =>
  closed || sides.some(({ localVertices }) => localVertices[0] === localVertices[localVertices.length - 1]);

function placeOf({ id, vertices }: SeamChain): FindingPlace {
  return { seam: id, edges: clipPlaces(Array.from(vertices.subarray(1), (v, i) => [vertices[i], v] as const)) };
}

const STEEP_WORDS = {
  split: 'with strips between',
  fill: 'with a gap that is filled',
  trim: 'with a gap under a strip',
} as const;

function seamSettingFindings(
  mesh: Mesh,
  patches: readonly Patch[],
  found: Found,
  setting: SeamSetting,
): readonly Finding[] {
  const { edge, kind, allowanceMm, steep } = setting;
  const wish = { about: 'seam', edge } as const;
  const how =
    kind === 'rebate'
      ? 'be a rebate'
      : kind === 'butt' && allowanceMm === 0 && steep !== undefined
        ? `be built ${STEEP_WORDS[steep]} where it is too sharp for the blade`
        : `${kind} with an allowance of ${allowanceMm} mm`;
  const said = `The seam through ${inFile(edge)} is to ${how}`;
  if (found === 'nowhere') {
    return [
      {
        code: 'wish/no-such-edge',
        severity: 'warning',
        text: `${said}, but the sculpt has no such edge: forget the wish, or say it of the seam you mean.`,
        where: cornersThere(mesh, edge),
        wish,
      },
    ];
  }
  // A plain butt seam is what every seam is: nothing is lost with it.
  const isPlain = kind === 'butt' && allowanceMm === 0 && steep === undefined;
  if (found === 'inside' || found.kind === 'open') {
    if (isPlain) return [];
    const why = found === 'inside' ? 'the foam is not parted there: part it there' : 'that is an open edge of the foam';
    return [
      {
        code: 'wish/no-seam',
        severity: 'warning',
        text: `${said}, but ${why}${found === 'inside' ? ', or forget the wish' : ', with nothing to meet: forget the wish'}.`,
        where: found === 'inside' ? { edges: [verticesOf(mesh, edge)] } : placeOf(found),
        wish,
      },
    ];
  }
  const [face, does] =
    kind === 'rebate'
      ? [setting.standFace, 'have']
      : [kind === 'butt' && allowanceMm === 0 ? undefined : setting.lapFace, 'carry its allowance on'];
  if (face === undefined || holdsFace(mesh, patches, found, face)) return [];
  const stands = kind === 'rebate' ? ' stand on its neighbour' : '';
  return [
    {
      code: 'wish/no-such-side',
      severity: 'warning',
      text: `Seam ${found.letter} is to ${does} the piece with face ${face} of the file (counted from 0)${stands}, but neither of its sides is that piece: choose the side anew.`,
      where: placeOf(found),
    },
  ];
}

/** True when one of a seam's sides lies on the patch with the face. */
function holdsFace(mesh: Mesh, patches: readonly Patch[], { sides }: SeamChain, face: number): boolean {
  return sides.some(({ patch }) => patches[patch].meshTriangles.some((t) => mesh.faceOfTriangle[t] === face));
}

/** Areas and pieces named by polygons that the sculpt does not have: every polygon it has lies in a piece. */
function faceFindings(mesh: Mesh, regions: readonly Region[], settings: readonly PieceSetting[]): readonly Finding[] {
  if (regions.length + settings.length === 0) return [];
  const known = new Set(mesh.faceOfTriangle);
  return [
    ...regions.flatMap((region) => areaFindings(mesh, known, region)),
    ...settings
      .filter(({ face }) => !known.has(face))
      .map(({ face, name }): Finding => ({
        code: 'wish/no-such-piece',
        severity: 'warning',
        text: `What was wished for the piece ${name === undefined ? '' : `“${name}” `}with face ${face} of the file (counted from 0) is lost, because the sculpt has no such face: forget it, or say it of the piece you mean.`,
        where: {},
        wish: { about: 'piece', face },
      })),
  ];
}

function areaFindings(
  mesh: Mesh,
  known: ReadonlySet<number>,
  { id, name, faces, give, seams }: Region,
): readonly Finding[] {
  const missing = faces.filter((face) => !known.has(face));
  if (missing.length === 0 && faces.length > 0) return [];
  const said = missing.slice(0, MOST_SAID).join(', ');
  const numbers = `${said}${missing.length > MOST_SAID ? ` and ${missing.length - MOST_SAID} more` : ''}, counted from 0`;
  if (missing.length === faces.length) {
    const asked = give !== 'normal' ? `is to be ${give}` : seams === 'clear' ? 'is to be clear of seams' : 'is marked';
    const why = faces.length === 0 ? 'names no face' : `names no face of the sculpt (${numbers})`;
    return [
      {
        code: 'wish/no-such-area',
        severity: 'warning',
        text: `The area “${name}” ${asked}, but ${why}: forget it, or mark it anew.`,
        where: {},
        wish: { about: 'area', id },
      },
    ];
  }
  const own = new Set(faces);
  const there = Array.from(mesh.faceOfTriangle.keys()).filter((t) => own.has(mesh.faceOfTriangle[t]));
  return [
    {
      code: 'wish/area-in-part',
      severity: 'warning',
      text: `Of the ${faces.length} faces of the area “${name}” the sculpt lacks ${missing.length} (${numbers}), and what is said holds for the rest alone: mark the area anew if it should be larger.`,
      value: missing.length,
      where: { triangles: clipPlaces(there) },
      wish: { about: 'faces', faces: missing },
    },
  ];
}

function shrinkageFindings(layers: SculptPart['layers'], foam: FoamSheet): readonly Finding[] {
  if (foam.shrinkage !== undefined || !layers.some(({ allowForShrinkage }) => allowForShrinkage)) return [];
  return [
    {
      code: 'wish/shrinkage-unknown',
      severity: 'warning',
      text: `Pieces are to be cut larger for shrinkage, but it is not known what ${foam.name} loses, so they are not: warm a square of 100 mm and enter what it loses along and across, or forget the wish.`,
      where: {},
      wish: { about: 'shrinkage' },
    },
  ];
}
