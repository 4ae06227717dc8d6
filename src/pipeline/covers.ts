import type { Finding } from '../base/finding.ts';
import { dot3 } from '../geom/vec.ts';
import { placeOf } from '../mesh/lines/mesh-point.ts';
import { triangleNormal } from '../mesh/measure.ts';
import { surfaceOf } from '../mesh/surface.ts';
import { topologyOf, triangleOfHalfedge } from '../mesh/topology.ts';
import type { SeamChain } from '../model/seams.ts';
import type { NetCover } from '../model/trim.ts';
import type { CoversFields } from '../project/trim-part.ts';
import type { TrimLine } from '../steps/trim/trim-ground.ts';
import { chainName, chainThrough, joinedLines } from './trim-lines.ts';
import { groundOf, type TrimSculpt } from './trim-sculpt.ts';

/** A place looks to a hidden side where its normal is nearer to that direction than this, as a cosine: 60 degrees [J]. */
const HIDDEN_COSINE = 0.5;

/** The lines of all seams of a sculpt that are in view, in as few runs as there can be. */
export interface Covers {
  readonly lines: readonly TrimLine[];
  readonly findings: readonly Finding[];
}

/** Seams of which more than half looks to the hidden side, and such as are to stay without, have no cover, which is told. */
export function coversOf(on: TrimSculpt, { mostTurnDeg, without = [] }: CoversFields): Covers {
  const seams = on.chains.filter(({ kind }) => kind !== 'open');
  const bare = new Set(without.map((edge) => chainThrough(on, edge)));
  const hidden = new Set(seams.filter((chain) => isHidden(on, chain)));
  const isSeen = (chain: SeamChain): boolean => !bare.has(chain) && !hidden.has(chain);
  const { lines, net } = joinedLines(on, seams, (mostTurnDeg * Math.PI) / 180, isSeen);
  const seen = seams.filter(isSeen);
  return {
    lines: lines.map((line) => downward(on, line)),
    findings: [
      ...(seen.length === 0 ? [NONE_SEEN] : [coverFinding(net, seen.length)]),
      ...leftOut([...hidden], 'lie on the hidden side'),
      ...leftOut(
        seams.filter((chain) => bare.has(chain)),
        'are to stay without',
      ),
      ...(bare.has(null) ? [LOST] : []),
    ],
  };
}

/** Ends as high as each other within this are told by how far they lie in front, mm. */
const SAME_HEIGHT_MM = 0.1;

/** An open line from its higher end to its lower one, or from the front to the back, so that lines that mirror each other have their marks alike. */
function downward({ mesh, up }: TrimSculpt, named: TrimLine): TrimLine {
  const { points, closed } = named.line;
  const surface = surfaceOf(mesh);
  const ends = [points[0], points[points.length - 1]].map((point) => placeOf(surface, point));
  const ahead = up === 'z' ? 'y' : 'z';
  const [fall, back] = ([up, ahead] as const).map((axis) => ends[0][axis] - ends[1][axis]);
  const isUpward = Math.abs(fall) > SAME_HEIGHT_MM ? fall < 0 : back < 0;
  return closed || !isUpward ? named : { ...named, line: { points: points.toReversed(), closed } };
}

function isHidden({ mesh, hidden, ...on }: TrimSculpt, { vertices }: SeamChain): boolean {
  if (hidden === null) return false;
  const { positions } = groundOf({ mesh, hidden, ...on }, 0).foot;
  const topology = topologyOf(mesh);
  let [away, whole] = [0, 0];
  for (let i = 1; i < vertices.length; i += 1) {
    const [a, b] = [vertices[i - 1], vertices[i]];
    const h = topology.halfedgeOfEdge[topology.edgeBetween(a, b)];
    const facing = [h, topology.twin[h]]
      .filter((side) => side >= 0)
      .map((side) => dot3(triangleNormal(positions, mesh.triangles, triangleOfHalfedge(side)), hidden));
    const length = Math.hypot(...[0, 1, 2].map((axis) => positions[3 * b + axis] - positions[3 * a + axis]));
    whole += length;
    if (facing.reduce((sum, one) => sum + one, 0) / facing.length > HIDDEN_COSINE) away += length;
  }
  return away > whole / 2;
}

function coverFinding({ reachedTrails, fewestTrails, fewestWithTurns, lengthMm }: NetCover, seams: number): Finding {
  const cover = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
  const isLeast = reachedTrails === fewestWithTurns;
  const turning = fewestTrails < reachedTrails ? ' with so little turning' : '';
  const best = isLeast ? `fewer cannot be${turning}` : `fewer than ${fewestWithTurns} cannot be`;
  return {
    code: 'trim/covers',
    severity: 'note',
    text: `${cover(reachedTrails, 'run')} of strip cover${reachedTrails === 1 ? 's' : ''} ${cover(seams, 'seam')}, ${Math.round(lengthMm)} mm in all: ${best}.`,
    value: lengthMm,
    unit: 'mm',
    where: {},
  };
}

function leftOut(chains: readonly SeamChain[], why: string): readonly Finding[] {
  if (chains.length === 0) return [];
  return [
    {
      code: 'trim/left-out',
      severity: 'note',
      text: `No strip covers ${chains.map(chainName).join(', ')}, which ${why}.`,
      where: { seam: chains[0].id },
    },
  ];
}

const NONE_SEEN: Finding = {
  code: 'trim/none-seen',
  severity: 'warning',
  text: 'No seam of the sculpt is in view, so there is nothing to cover: mark seams, or leave fewer out.',
  where: {},
};

const LOST: Finding = {
  code: 'trim/lost-seam',
  severity: 'note',
  text: 'A seam that was to stay without a cover is no more.',
  where: {},
};
