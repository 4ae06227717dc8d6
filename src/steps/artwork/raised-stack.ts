import { formatNumber } from '../../base/format-length.ts';
import type { Finding } from '../../base/finding.ts';
import { ok, type Result } from '../../base/result.ts';
import type { Ring } from '../../geom/ring.ts';
import { terraced, type Slab } from '../../mesh/extruded.ts';
import type { ArtRegion, Artwork } from '../../model/artwork.ts';
import type { PlainDraft, PlainLine, PlainStep, PlainWork } from '../../model/plain-piece.ts';
import type { RaisedWish } from '../../model/artwork-craft.ts';
import { artworkWork } from './artwork-work.ts';
import { offsetArtwork } from './offset-artwork.ts';
import { raisedProfile, raisedSteps, type RaisedStep } from './raised-profile.ts';
import { isRingInside } from './regions.ts';

export interface RaisedLayer extends RaisedStep {
  readonly artwork: Artwork;
  /** Round all its outlines, mm. */
  readonly edgeMm: number;
}

export interface RaisedStack {
  /** From the ground up. */
  readonly layers: readonly RaisedLayer[];
  /** What is sanded off and filled for the smooth edge, mm³: area across the edge times its length, and how far that may be off. */
  readonly sandMm3: number;
  readonly fillMm3: number;
  readonly withinMm3: number;
  readonly work: PlainWork;
}

/**
 * A badge as a stack of sheets, each set back inside the drawn outline by as much as its smooth edge asks for, holes opening by as much. What is sanded
 * is taken to first order, along the layer's own outline; the outline of the smooth edge at the layer's top is shorter or longer by some, and so much
 * the figure may be off as long as nothing vanishes between (Steiner: length changes evenly with the distance).
 * @returns fails as {@link offsetArtwork} and {@link artworkWork} do. @throws RangeError for no layers or no thickness.
 */
export function raisedStack(
  artwork: Artwork,
  { layers: count, thicknessMm, edge, rule }: RaisedWish,
): Result<RaisedStack> {
  if (!(count >= 1) || !(thicknessMm > 0)) throw new RangeError(`${count} layers of ${thicknessMm} mm`);
  const profile = raisedProfile(edge, count * thicknessMm);
  const findings: Finding[] = [];
  const layers: RaisedLayer[] = [];
  let [sandMm3, fillMm3, withinMm3] = [0, 0, 0];
  for (const [i, step] of raisedSteps(profile, count, thicknessMm, rule).entries()) {
    const own = offsetArtwork(artwork, -step.setbackMm, 'round');
    if (!own.ok) return own;
    findings.push(...own.notes.map((note) => ({ ...note, text: `Layer ${i + 1}: ${note.text}` })));
    const edgeMm = edgeOf(own.value);
    const top = offsetArtwork(artwork, -step.topSetbackMm, 'round');
    sandMm3 += step.sandMm2 * edgeMm;
    fillMm3 += step.fillMm2 * edgeMm;
    withinMm3 += (step.sandMm2 + step.fillMm2) * Math.abs(edgeMm - (top.ok ? edgeOf(top.value) : 0));
    layers.push({ ...step, artwork: own.value, edgeMm });
  }
  const work = workOf(layers, thicknessMm, { sandMm3, fillMm3, withinMm3 });
  if (!work.ok) return work;
  return ok({ layers, sandMm3, fillMm3, withinMm3, work: work.value }, [...findings, ...work.notes]);
}

const edgeOf = ({ pieces }: Artwork): number =>
  pieces
    .flatMap(({ regions }) => regions)
    .flatMap(({ outline, holes }) => [outline, ...holes])
    .reduce((sum, { lengthMm }) => sum + lengthMm, 0);

const regionsOf = ({ pieces }: Artwork): readonly ArtRegion[] => pieces.flatMap(({ regions }) => regions);

function workOf(
  layers: readonly RaisedLayer[],
  thicknessMm: number,
  volumes: { readonly sandMm3: number; readonly fillMm3: number; readonly withinMm3: number },
): Result<PlainWork> {
  const pieces: PlainDraft[] = [];
  const steps: PlainStep[] = [];
  const findings: Finding[] = [];
  for (const [i, { artwork }] of layers.entries()) {
    const isTop = i === layers.length - 1;
    // Open lines are seen on the top alone.
    const bare = isTop ? artwork : { ...artwork, pieces: artwork.pieces.map((piece) => ({ ...piece, lines: [] })) };
    const made = artworkWork(bare, { thicknessMm });
    if (!made.ok) return made;
    const { pieces: own, steps: gluing, findings: told } = made.value;
    const above = isTop ? [] : regionsOf(layers[i + 1].artwork);
    const regions = regionsOf(artwork);
    pieces.push(
      ...own.map((draft, k): PlainDraft => ({
        ...draft,
        key: `layer-${i + 1}-${draft.key}`,
        name: `${draft.name}, layer ${i + 1}`,
        lines: [...draft.lines, ...placingLines(regions[k], above)],
        notes: [`Layer ${i + 1} of ${layers.length}, counted from the ground up.`],
      })),
    );
    steps.push(
      ...gluing.map((step): PlainStep => ({
        ...step,
        work: i === 0 ? 'lay' : 'stack',
        pieces: step.pieces.map((key) => `layer-${i + 1}-${key}`),
        text: i === 0 ? step.text : `Layer ${i + 1}, within the line on layer ${i}: ${step.text}`,
      })),
    );
    findings.push(...told);
  }
  steps.push(...finishing(pieces, volumes));
  return ok({ pieces, steps, findings, form: terraced(slabsOf(layers, thicknessMm)) }, findings);
}

/** Where the pieces of the next layer come to lie on one of this. */
function placingLines({ outline, holes }: ArtRegion, above: readonly ArtRegion[]): readonly PlainLine[] {
  const isOn = (ring: Ring): boolean =>
    isRingInside(ring, outline.ring) && !holes.some((hole) => isRingInside(ring, hole.ring));
  return above
    .filter((region) => isOn(region.outline.ring))
    .flatMap((region) => [region.outline, ...region.holes])
    .map(({ ring }) => ({ role: 'placement', points: ring, closed: true }));
}

function finishing(
  pieces: readonly PlainDraft[],
  { sandMm3, fillMm3, withinMm3 }: { readonly sandMm3: number; readonly fillMm3: number; readonly withinMm3: number },
): readonly PlainStep[] {
  const keys = pieces.map(({ key }) => key);
  const cm3 = (value: number): string => `${formatNumber(value / 1000, 2)} cm³`;
  const step = (work: 'sand' | 'fill', text: string): PlainStep => ({
    work,
    pieces: keys,
    text,
    glueMm2: 0,
    cautions: work === 'sand' ? ['dust'] : [],
  });
  return [
    ...(fillMm3 > 0
      ? [step('fill', `Fill the steps where they stand inside the smooth edge: about ${cm3(fillMm3)}.`)]
      : []),
    ...(sandMm3 > 0
      ? [step('sand', `Sand the steps down to the smooth edge: about ${cm3(sandMm3)}, give or take ${cm3(withinMm3)}.`)]
      : []),
  ];
}

/** Layers whose edges stand over each other are one slab. */
function slabsOf(layers: readonly RaisedLayer[], thicknessMm: number): readonly Slab[] {
  const slabs: Slab[] = [];
  for (const [i, { artwork, setbackMm }] of layers.entries()) {
    const isSame = i > 0 && layers[i - 1].setbackMm === setbackMm;
    const regions = regionsOf(artwork).map(({ outline, holes }) => ({
      outer: outline.ring,
      holes: holes.map(({ ring }) => ring),
    }));
    if (isSame) slabs[slabs.length - 1] = { ...slabs[slabs.length - 1], top: (i + 1) * thicknessMm };
    else slabs.push({ regions, bottom: i * thicknessMm, top: (i + 1) * thicknessMm });
  }
  return slabs;
}
