import { sculptAtWork } from '../project/at-work.ts';
import { LitElement } from 'lit';
import { property } from 'lit/decorators.js';
import type { LengthUnit } from '../base/format-length.ts';
import type { Command } from '../project/commands.ts';
import type { Project, SculptPart } from '../project/project.ts';
import { changeAsSeen } from '../project/change-seen.ts';
import { EMPTY_BENCH, type Bench } from './bench-state.ts';
import { CommandEvent, PointEvent, VerbEvent } from './events.ts';
import { SHARED } from './styles.ts';
import { nextTurn } from './turns.ts';
import type { Pointed } from './view-state.ts';

/** What every line of the job sheet is given and can ask for. */
export abstract class JobSection extends LitElement {
  static override styles = [SHARED];

  /** The document, or null before a job is open. */
  @property({ attribute: false }) project: Project | null = null;
  /** The last result. */
  @property({ attribute: false }) bench: Bench = EMPTY_BENCH;

  /** Puts the keyboard at the line's heading; the next Tab goes to its first control. */
  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('fl-job-line')?.focus(options);
  }

  /** Puts the keyboard at a part of the line. */
  focusOn(selector: string): void {
    this.renderRoot.querySelector<HTMLElement>(selector)?.focus();
  }

  pressOn(selector: string): void {
    this.renderRoot.querySelector<HTMLElement>(selector)?.click();
  }

  /** Lines of the sheet are drawn one after the other, each in a task of its own. */
  protected override async scheduleUpdate(): Promise<void> {
    await nextTurn();
    await super.scheduleUpdate();
  }

  protected get sculptPart(): SculptPart | null {
    return this.project === null ? null : sculptAtWork(this.project);
  }

  protected get unit(): LengthUnit {
    return this.project?.lengthUnit ?? 'mm';
  }

  /** The change is meant of what stands on the sheet, which may be drawn a moment after the document has changed. */
  protected send(command: Command): void {
    this.dispatchEvent(new CommandEvent(changeAsSeen(command, this.project)));
  }

  protected point(pointed: Pointed | null): void {
    this.dispatchEvent(new PointEvent(pointed));
  }

  protected ask(verb: string): void {
    this.dispatchEvent(new VerbEvent(verb));
  }
}
