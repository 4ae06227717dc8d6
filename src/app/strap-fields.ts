import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { changePlain } from '../project/plain-commands.ts';
import type { StrapPart } from '../project/plain-part.ts';
import type { StrapFields as StrapOf } from '../project/trim-part.ts';
import { choiceField, lengthField, numberField, tickField } from './figure-fields.ts';
import { FIELDS_BELOW, FIELDS_STYLE } from './fields-style.ts';
import { JobSection } from './job-section.ts';
import { STRIP_WORDS } from './strip-words.ts';
import { SHARED } from './styles.ts';
import { means } from './help/means.ts';

type Strap = StrapOf['strap'];

const MOST_HOLES = 100;

/** Sizes of a strap, its holes and its buckle. */
@customElement('fl-strap-fields')
export class StrapFields extends JobSection {
  static override styles = [
    SHARED,
    FIELDS_STYLE,
    FIELDS_BELOW,
    css`
      .fields .tick {
        flex-direction: row;
        align-items: center;
        gap: var(--s2);
        font-size: var(--t-small);
      }
    `,
  ];

  @property({ attribute: false }) item: StrapPart | null = null;

  protected override render() {
    if (this.item === null) return nothing;
    const { unit } = this;
    const { strap } = this.item;
    const { holes, buckle, tip } = strap;
    const words = STRIP_WORDS.strap;
    const change = (to: Partial<Strap>): void => this.#change(to);
    return html`<fieldset>
        <legend>${words.fields}</legend>
        <div class="fields">
          ${means(
            'strap-girth',
            lengthField(words.girth, strap.girthMm, unit, (girthMm) => change({ girthMm })),
          )}
          ${means(
            'strip-width',
            lengthField(STRIP_WORDS.width, strap.widthMm, unit, (widthMm) => change({ widthMm })),
          )}
          ${means(
            'strap-overlap',
            lengthField(words.overlap, strap.overlapMm, unit, (overlapMm) => change({ overlapMm })),
          )}
          ${means(
            'strap-tip',
            choiceField(words.tip, words.tips, tip.kind, (kind) =>
              change({ tip: kind === 'rounded' ? { kind } : { kind, lengthMm: strap.widthMm } }),
            ),
          )}
          ${
            tip.kind === 'pointed'
              ? means(
                  'strap-point',
                  lengthField(words.point, tip.lengthMm, unit, (lengthMm) => change({ tip: { ...tip, lengthMm } })),
                )
              : nothing
          }
          ${means(
            'strap-reinforced',
            tickField(words.reinforced, strap.isReinforced, (isReinforced) => change({ isReinforced })),
          )}
        </div>
      </fieldset>
      <fieldset>
        <legend>${words.holes}</legend>
        <div class="fields">
          ${means(
            'strap-holes',
            numberField(words.holes, holes.count, '', (count) => change({ holes: { ...holes, count } }), {
              least: 1,
              most: MOST_HOLES,
              isWhole: true,
            }),
          )}
          ${means(
            'strap-spacing',
            lengthField(words.spacing, holes.spacingMm, unit, (spacingMm) =>
              change({ holes: { ...holes, spacingMm } }),
            ),
          )}
          ${means(
            'strap-hole',
            lengthField(words.hole, holes.diameterMm, unit, (diameterMm) =>
              change({ holes: { ...holes, diameterMm } }),
            ),
          )}
        </div>
      </fieldset>
      <fieldset>
        <legend>${words.buckle}</legend>
        <div class="fields">
          ${means(
            'strap-bar',
            lengthField(words.bar, buckle.barMm, unit, (barMm) => change({ buckle: { ...buckle, barMm } })),
          )}
          ${means(
            'strap-tab',
            lengthField(words.tab, buckle.tabMm, unit, (tabMm) => change({ buckle: { ...buckle, tabMm } })),
          )}
          ${means(
            'strap-slot',
            lengthField(
              words.slot,
              buckle.slotWidthMm,
              unit,
              (slotWidthMm) => change({ buckle: { ...buckle, slotWidthMm } }),
              { least: 0 },
            ),
          )}
          ${means(
            'strap-keeper',
            lengthField(words.keeper, strap.keeperWidthMm, unit, (keeperWidthMm) => change({ keeperWidthMm })),
          )}
        </div>
      </fieldset>`;
  }

  #change(change: Partial<Strap>): void {
    const { item } = this;
    if (item !== null)
      this.send(changePlain<StrapPart>(item.id, { strap: { ...item.strap, ...change } }, 'change a strap'));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-strap-fields': StrapFields;
  }
}
