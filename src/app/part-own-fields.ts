import { html, nothing } from 'lit';
import type { PlainPart } from '../project/plain-part.ts';
import type { Project } from '../project/project.ts';
import type { PartsAsking } from '../worker/parts-api.ts';
import type { Bench } from './bench-state.ts';
import './build-up-fields.ts';
import './strap-fields.ts';
import './strip-fields.ts';

/** Figures that parts of one kind have and no others; nothing where a kind has none here. */
export function ownFields(part: PlainPart, project: Project | null, bench: Bench, asking: PartsAsking | null) {
  switch (part.kind) {
    case 'covers':
    case 'trim':
      return html`<fl-strip-fields .project=${project} .bench=${bench} .item=${part}></fl-strip-fields>`;
    case 'build-up':
      return html`<fl-build-up-fields .project=${project} .item=${part} .asking=${asking}></fl-build-up-fields>`;
    case 'strap':
      return html`<fl-strap-fields .project=${project} .bench=${bench} .item=${part}></fl-strap-fields>`;
    default:
      return nothing;
  }
}
