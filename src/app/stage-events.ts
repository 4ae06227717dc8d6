import type { BenchPick, BenchPlane, SectionFigures } from '../viewport/bench-contract.ts';

/** The pointer is over something on the stage. */
export class StageHoverEvent extends Event {
  constructor(readonly pick: BenchPick) {
    super('fl-stage-hover', { bubbles: true, composed: true });
  }
}

/** A press on something of the stage; cancel it to drag that thing instead of turning the view. */
export class StageGrabEvent extends Event {
  constructor(readonly pick: BenchPick) {
    super('fl-stage-grab', { bubbles: true, composed: true, cancelable: true });
  }
}

/** What was grabbed is dragged to another place. */
export class StageDragEvent extends Event {
  constructor(readonly pick: BenchPick) {
    super('fl-stage-drag', { bubbles: true, composed: true });
  }
}

/** What was dragged is let go. */
export class StageDropEvent extends Event {
  constructor() {
    super('fl-stage-drop', { bubbles: true, composed: true });
  }
}

/** Something on the stage was clicked. */
export class StagePickEvent extends Event {
  constructor(readonly pick: BenchPick) {
    super('fl-stage-pick', { bubbles: true, composed: true });
  }
}

/** The plane in hand was moved, by dragging it or by keys. */
export class StagePlaneEvent extends Event {
  constructor(
    readonly plane: BenchPlane,
    /** False while it is still being dragged. */
    readonly isDone: boolean,
    readonly isByKey = false,
  ) {
    super('fl-stage-plane', { bubbles: true, composed: true });
  }
}

/** What the plane in hand cuts open has changed; null when nothing is. */
export class StageSectionEvent extends Event {
  constructor(readonly figures: SectionFigures | null) {
    super('fl-stage-section', { bubbles: true, composed: true });
  }
}

/** The bench is drawn in 3D from now on, or no longer. */
export class StageStandEvent extends Event {
  constructor(readonly hasScene: boolean) {
    super('fl-stage-stand', { bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-stage-hover': StageHoverEvent;
    'fl-stage-pick': StagePickEvent;
    'fl-stage-grab': StageGrabEvent;
    'fl-stage-drag': StageDragEvent;
    'fl-stage-drop': StageDropEvent;
    'fl-stage-plane': StagePlaneEvent;
    'fl-stage-section': StageSectionEvent;
    'fl-stage-stand': StageStandEvent;
  }
}
