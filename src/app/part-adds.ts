import { html, nothing } from 'lit';
import { foamOfStrips, newCovers, newStrap, newTrim } from '../project/new-strips.ts';
import { newCore } from '../project/new-core.ts';
import { firstFoam } from '../project/new-project.ts';
import { placeBeside } from '../project/part-place.ts';
import type { NewPlain } from '../project/plain-commands.ts';
import type { Project } from '../project/project.ts';
import { sculptAtWork } from '../project/at-work.ts';
import type { Bench } from './bench-state.ts';
import { BUILD_UP_WORDS } from './build-up-words.ts';
import { standingOn, upOf } from './parts-actions.ts';
import { STRIP_WORDS } from './strip-words.ts';
import type { Choice } from './view-state.ts';
import { pairsOfSeam } from './wish-actions.ts';

/** Buttons that add strips, straps and cores: covers while a sculpt has seams, trim while a seam of it is chosen. */
export function partAdds(project: Project, bench: Bench, choice: Choice, add: (part: NewPlain) => void) {
  const sculpt = sculptAtWork(project);
  if (project.foams.length === 0) return nothing;
  const foam = foamOfStrips(project.foams).id;
  const chains = sculpt === null ? [] : (bench.seams?.chains ?? []);
  const words = STRIP_WORDS;
  const seam = choice.kind === 'seam' ? chains.find(({ id }) => id === choice.seam) : undefined;
  const edges = seam === undefined ? [] : pairsOfSeam(bench, seam.id).slice(0, 1);
  const usual = firstFoam(project.foams).id;
  const sheets = [usual, ...(foam === usual ? [] : [foam])];
  const place = placeBeside(standingOn(bench), null, upOf(project));
  return html`${
      sculpt === null || !chains.some(({ kind }) => kind !== 'open')
        ? nothing
        : html`<button title=${words.add.coversWhy} @click=${() => add(newCovers(words.names.covers, sculpt.id, foam))}>
            ${words.add.covers}
          </button>`
    }
    ${
      sculpt === null || seam === undefined || edges.length === 0
        ? nothing
        : html`<button @click=${() => add(newTrim(words.names.trim, sculpt.id, foam, edges))}>
            ${words.add.trim(seam.letter)}
          </button>`
    } <button @click=${() => add(newStrap(words.names.strap, foam, place))}>${words.add.strap}</button>
    <button title=${BUILD_UP_WORDS.addWhy} @click=${() => add(newCore(BUILD_UP_WORDS.name, sheets, place))}>
      ${BUILD_UP_WORDS.add}
    </button>`;
}
