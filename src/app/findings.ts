import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Finding } from '../base/finding.ts';
import type { StepName } from '../model/bench-view.ts';
import { chainIndex, pieceIndex, type Bench } from './bench-state.ts';
import { edgeIndexOf } from './edge-index.ts';
import { ChooseEvent } from './events.ts';
import { findingText } from './finding-text.ts';
import { JobSection } from './job-section.ts';
import { joinRemedies } from './join-remedies.ts';
import { placedText } from './verdict/name-of-place.ts';
import { findingKey } from './verdict/told-findings.ts';
import { remedyFor } from './remedies.ts';
import { SHARED } from './styles.ts';
import { isSameChoice, NOTHING, type Choice, type Pointed } from './view-state.ts';
import { WORDS } from './words.ts';

/** Findings shown before the rest is folded away. */
const FIRST_FEW = 4;
/** Steps that are about all parts together. */
const LAID: readonly string[] = ['nest', 'tile'];

/** What the steps of one line found: each one sentence with its remedy; pointing at it lights up the place. */
@customElement('fl-findings')
export class FindingList extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
      }
      li {
        display: grid;
        grid-template-columns: 4.2em minmax(0, 1fr);
        gap: 0 var(--s3);
        padding-block: var(--s2);
        border-block-start: var(--narrow) solid var(--rule-soft);
        font-size: var(--t-small);
      }
      .word {
        font-weight: 700;
        padding-block-start: 3px;
      }
      .error .word {
        color: var(--wrong);
      }
      .note .word {
        font-weight: 500;
        color: var(--ink-soft);
      }
      .at {
        display: block;
        font-weight: 600;
      }
      .row {
        margin-block: var(--s2) var(--s1);
      }
      /* Where their weight stands over them all. */
      :host([data-weighed]) li {
        grid-template-columns: minmax(0, 1fr);
      }
      :host([data-weighed]) li > span:empty {
        display: none;
      }
      li li:first-child {
        border-block-start: 0;
      }
      details > summary {
        min-block-size: 24px;
        font-weight: 500;
      }
    `,
  ];

  /** Steps whose findings belong here: the part of a finding's code before the slash. */
  @property({ attribute: false }) steps: readonly string[] = [];
  /** Id of the part whose findings belong here, of all steps but those; empty where all parts' do. */
  @property() ofPart = '';
  /** Findings to show in place of those of steps and parts, each with the name of its place; null for none. */
  @property({ attribute: false }) given: readonly Finding[] | null = null;

  @property({ attribute: false }) choice: Choice = NOTHING;

  protected override willUpdate(): void {
    this.toggleAttribute('data-weighed', this.given !== null);
  }

  protected override render() {
    const groups = alike(this.#mine());
    if (groups.length === 0) return nothing;
    return html`<ul>
        ${groups.slice(0, FIRST_FEW).map((group) => this.#group(group))}
      </ul>
      ${
        groups.length > FIRST_FEW
          ? html`<details>
              <summary>${WORDS.findings.more(groups.length - FIRST_FEW)}</summary>
              <ul>
                ${groups.slice(FIRST_FEW).map((group) => this.#group(group))}
              </ul>
            </details>`
          : nothing
      }`;
  }

  /** The step that stopped first, then errors, warnings and notes in the order of the job. */
  #mine(): readonly Finding[] {
    if (this.given !== null) return this.given;
    const { findings, stopped } = this.bench;
    const own = findings.filter(({ code, where }) => {
      const [step] = code.split('/');
      if (this.ofPart !== '') return where.part === this.ofPart && !this.steps.includes(step);
      return this.steps.includes(step) && (LAID.includes(step) || !this.#isOfOther(where.part));
    });
    const isTold =
      stopped === null || !this.steps.includes(stopped.step) || own.some(({ code }) => code === stopped.problem.code);
    const all = isTold ? own : [{ ...stopped.problem, severity: 'error' as const }, ...own];
    const rank = { error: 0, warning: 1, note: 2 };
    // The question for the size is asked on the size's own line.
    return all
      .filter(({ code }) => code !== 'size/unknown')
      .toSorted((one, other) => rank[one.severity] - rank[other.severity]);
  }

  /** What is about another part than the sculpt at work is told with that part. */
  #isOfOther(part: string | undefined): boolean {
    return part !== undefined && this.sculptPart !== null && part !== this.sculptPart.id;
  }

  /** One finding in full; others of its kind folded under it. */
  #group([first, ...rest]: readonly Finding[]) {
    return html`${this.#line(first)}
    ${
      rest.length === 0
        ? nothing
        : html`<li class=${first.severity}>
            <span></span>
            <details>
              <summary>${WORDS.findings.alike(rest.length)}</summary>
              <ul>
                ${rest.map((finding) => this.#line(finding))}
              </ul>
            </details>
          </li>`
    }`;
  }

  #line(finding: Finding) {
    const remedy = remedyFor(finding, this.bench);
    const remedies = remedy === null ? joinRemedies(finding, this.project) : [remedy];
    const told = findingText(finding, this.unit);
    const { at, text } =
      this.given === null ? { at: '', text: told } : placedText(finding, this.bench, this.project, told);
    const place = placeOf(finding, this.bench);
    const light = (): void => this.point(place);
    const dark = (): void => this.point(null);
    return html`<li
      class=${finding.severity}
      @pointerenter=${light}
      @pointerleave=${dark}
      @focusin=${light}
      @focusout=${dark}
    >
      <span class=${this.given === null ? 'word' : 'unseen'}>${WORDS.findings.severity[finding.severity]}</span>
      <div>
        ${at === '' ? nothing : html`<span class="at">${at}</span>`}
        ${place === null ? html`<span>${text}</span>` : this.#placeButton(finding, place, text)}
        ${
          remedies.length === 0
            ? nothing
            : html`<div class="row">
                ${remedies.map(
                  ({ label, command }) =>
                    html`<button class=${finding.severity === 'note' ? 'plain' : ''} @click=${() => this.send(command)}>
                      ${label}
                    </button>`,
                )}
              </div>`
        }
      </div>
    </li>`;
  }

  #placeButton(finding: Finding, place: Pointed, text: string) {
    const choice = this.#choiceOf(finding, place);
    const isChosen = isSameChoice(this.choice, choice);
    return html`<button
      class="place"
      aria-pressed=${isChosen}
      @click=${() => this.dispatchEvent(new ChooseEvent(isChosen ? NOTHING : choice))}
    >
      ${text}
    </button>`;
  }

  /** Its seam or its piece; what is of neither is chosen as the finding it is, and stays lit. */
  #choiceOf(finding: Finding, place: Pointed): Choice {
    const piece = this.bench.pieces?.pieces.find((candidate) => candidate.id === finding.where.piece);
    const seam = this.bench.seams?.chains.find((candidate) => candidate.id === finding.where.seam);
    if (seam !== undefined) return { kind: 'seam', seam: seam.id };
    if (piece !== undefined) return { kind: 'piece', piece: piece.id };
    return { kind: 'finding', key: findingKey(finding), place };
  }
}

/** Findings of one kind and weight together, in the order their first one comes. */
function alike(findings: readonly Finding[]): readonly (readonly Finding[])[] {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = `${finding.code} ${finding.severity}`;
    groups.set(key, [...(groups.get(key) ?? []), finding]);
  }
  return [...groups.values()];
}

/** The place a finding speaks of, as the stage counts; null when it speaks of no place. */
function placeOf(finding: Finding, bench: Bench): Pointed | null {
  const { where } = finding;
  const { sculpt } = bench;
  const pieces = where.piece === undefined ? [] : [pieceIndex(bench, where.piece)].filter((index) => index >= 0);
  const seams = where.seam === undefined ? [] : [chainIndex(bench, where.seam)].filter((index) => index >= 0);
  const index = where.edges === undefined || where.edges.length === 0 || sculpt === null ? null : edgeIndexOf(sculpt);
  const edges =
    index === null ? [] : (where.edges ?? []).map(([a, b]) => index.between(a, b)).filter((edge) => edge >= 0);
  const triangles = where.triangles ?? [];
  const vertices = where.vertices ?? [];
  const isNowhere =
    pieces.length + seams.length + edges.length + triangles.length + vertices.length === 0 && where.point === undefined;
  if (isNowhere) return null;
  return { pieces, seams, edges, triangles, vertices, ...(where.point === undefined ? {} : { point: where.point }) };
}

/** Findings of these steps that are wrong rather than noted. */
export function hasWrong(bench: Bench, steps: readonly StepName[]): boolean {
  return (
    (bench.stopped !== null && steps.includes(bench.stopped.step)) ||
    bench.findings.some(
      (finding) => finding.severity === 'error' && steps.includes(finding.code.split('/')[0] as StepName),
    )
  );
}
