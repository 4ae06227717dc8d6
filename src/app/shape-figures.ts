import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatArea, formatLength, formatNumber, type LengthUnit } from '../base/format-length.ts';
import { spokenName } from '../base/spoken-name.ts';
import type { ShapeMeasure } from '../model/shape.ts';
import { PART_WORDS } from './part-words.ts';
import { SHARED } from './styles.ts';

/** Figures of a shape, folded away until they are wanted. */
@customElement('fl-shape-figures')
export class ShapeFigures extends LitElement {
  static override styles = [SHARED];

  @property({ attribute: false }) figures: readonly ShapeMeasure[] = [];
  @property() unit: LengthUnit = 'mm';

  protected override render() {
    const words = PART_WORDS.shapes;
    if (this.figures.length === 0) return nothing;
    return html`<details>
      <summary>${words.figures(this.figures.length)}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">${words.figure}</th>
            <th scope="col" class="number">${words.value}</th>
          </tr>
        </thead>
        <tbody>
          ${this.figures.map(
            (figure) =>
              html`<tr>
                <td>
                  ${figure.of === undefined ? nothing : html`${spokenName(figure.of)}: `}${spokenName(figure.name)}
                </td>
                <td class=${typeof figure.value === 'number' ? 'number' : ''}>${figureText(figure, this.unit)}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </details>`;
  }
}

/** A figure with its unit as it is read. */
export function figureText({ value, unit }: Pick<ShapeMeasure, 'value' | 'unit'>, shown: LengthUnit): string {
  const row = typeof value === 'number' ? [value] : value;
  return row.map((one) => oneText(one, unit, shown)).join(', ');
}

function oneText(value: number, unit: string, shown: LengthUnit): string {
  if (unit === 'mm' && shown === 'in') return formatLength(value, 'in');
  if ((unit === 'mm2' || unit === 'mm²') && value >= 100) return formatArea(value, shown);
  const figure = Number.isInteger(value) ? formatNumber(value) : formatNumber(value, decimalsOf(value));
  if (unit === '') return figure;
  return unit === 'deg' ? `${figure}°` : `${figure}\u00a0${unit.replace('mm2', 'mm²').replace('mm3', 'mm³')}`;
}

/** Three decimals of small figures, one of large ones. */
const decimalsOf = (value: number): number => (Math.abs(value) < 10 ? 3 : Math.abs(value) < 1000 ? 2 : 1);

declare global {
  interface HTMLElementTagNameMap {
    'fl-shape-figures': ShapeFigures;
  }
}
