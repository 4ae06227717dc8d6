import { html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { SeamOfPieces } from '../model/shop-choices.ts';
import { CLAY_MOST_MM } from '../project/clay-limits.ts';
import { filletOf, setFillet } from '../project/finish-commands.ts';
import type { Bench } from './bench-state.ts';
import { JobSection } from './job-section.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import { PAINT_WORDS } from './paint-words.ts';
import { SHARED } from './styles.ts';

/** How wide the chosen seam is filled with clay; nothing where its face is nowhere hollow, or where it lies under another sheet. */
@customElement('fl-finish-fillet')
export class FinishFillet extends JobSection {
  static override styles = [SHARED];

  /** Id of the seam. */
  @property() seam = '';

  protected override render() {
    const name = seamName(this.bench, this.seam);
    const part = this.sculptPart;
    if (name === null || part === null) return nothing;
    const radius = filletOf(part, name)?.radiusMm ?? 0;
    const chain = this.bench.seams?.chains.find(({ id }) => id === this.seam);
    const isHollow = chain?.foldRad.some((fold) => fold < -LEAST_HOLLOW) === true;
    if (!isHollow && radius === 0) return nothing;
    return html`<fl-length-field
      data-means="fillet"
      class="inline"
      label=${PAINT_WORDS.fillet.field}
      .mm=${radius}
      .unit=${this.unit}
      .min=${0}
      .max=${CLAY_MOST_MM}
      @fl-length=${({ mm }: LengthEvent) => this.send(setFillet(name, mm === 0 ? null : mm))}
    ></fl-length-field>`;
  }
}

/** A flatter fold has no corner to fill, radians: 5 degrees. */
const LEAST_HOLLOW = (5 * Math.PI) / 180;

/** What names a seam of the sheet that is seen: its pieces, and which of theirs it is; null for another sheet's and for an open edge. */
export function seamName({ seams, pieces }: Bench, id: string): SeamOfPieces | null {
  if (seams === null || pieces === null || pieces.sheet !== 1) return null;
  const counts = new Map<string, number>();
  for (const chain of seams.chains) {
    const [a, b] = chain.sides.map(
      ({ patch }) => pieces.pieces.find((piece) => piece.patch === patch && patch < pieces.benchPatches)?.id,
    );
    if (a === undefined || b === undefined) continue;
    const pair = a < b ? `${a} ${b}` : `${b} ${a}`;
    const nth = counts.get(pair) ?? 0;
    counts.set(pair, nth + 1);
    if (chain.id === id) return { pieces: [a, b], nth };
  }
  return null;
}
