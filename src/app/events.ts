import type { FoamId } from '../base/ids.ts';
import type { Command } from '../project/commands.ts';
import type { MockUp } from '../project/mock-up.ts';
import type { SimplifyMeasure } from '../project/simplify-commands.ts';
import type { FilesAsk } from '../worker/files-api.ts';
import type { Choice, Pointed, ViewState, Wishes } from './view-state.ts';

const UPWARDS: EventInit = { bubbles: true, composed: true };

/** A change to the document that the maker asked for. */
export class CommandEvent extends Event {
  constructor(readonly command: Command) {
    super('fl-command', UPWARDS);
  }
}

/** Something that speaks of places is pointed at or focused; null when no longer. */
export class PointEvent extends Event {
  constructor(readonly pointed: Pointed | null) {
    super('fl-point', UPWARDS);
  }
}

/** A thing was chosen in a list. */
export class ChooseEvent extends Event {
  constructor(readonly choice: Choice) {
    super('fl-choose', UPWARDS);
  }
}

/** A verb was asked for by a button; verbs are listed in verbs.ts. */
export class VerbEvent extends Event {
  constructor(readonly verb: string) {
    super('fl-verb', UPWARDS);
  }
}

/** The view changes: slider, colouring, preview. */
export class ViewEvent extends Event {
  constructor(readonly patch: Partial<ViewState>) {
    super('fl-view', UPWARDS);
  }
}

/** A sample was asked for. */
export class SampleEvent extends Event {
  constructor(readonly sample: string) {
    super('fl-sample', UPWARDS);
  }
}

/** Edges sharper than an angle are asked for. */
export class SharpEvent extends Event {
  constructor(readonly angleDeg: number) {
    super('fl-sharp', UPWARDS);
  }
}

/** The sculpt is to be made simpler for paper, or taken as it is: null. */
export class SimplifyEvent extends Event {
  constructor(readonly measure: SimplifyMeasure | null) {
    super('fl-simplify', UPWARDS);
  }
}

/** A model file is to be a core of the part. */
export class CoreFileEvent extends Event {
  constructor(readonly file: File) {
    super('fl-core-file', UPWARDS);
  }
}

/** A model file is to be another sculpt of the job. */
export class SculptFileEvent extends Event {
  constructor(readonly file: File) {
    super('fl-sculpt-file', UPWARDS);
  }
}

/** A file is to be a part of its own: artwork that is cut out, or a solid that is stacked. */
export class PartFileEvent extends Event {
  constructor(
    readonly file: File,
    readonly foam: FoamId,
  ) {
    super('fl-part-file', UPWARDS);
  }
}

/** An SVG file holds the outline of an offcut. */
export class OffcutFileEvent extends Event {
  constructor(
    readonly file: File,
    readonly foam: FoamId,
  ) {
    super('fl-offcut-file', UPWARDS);
  }
}

/** A step of gluing is to come before another; null: what was said of a move is read. */
export class GluingMoveEvent extends Event {
  constructor(
    readonly step: number,
    readonly before: number | null,
  ) {
    super('fl-gluing-move', UPWARDS);
  }
}

/** Files are to be made and saved. */
export class FilesEvent extends Event {
  constructor(readonly pick: FilesAsk) {
    super('fl-files', UPWARDS);
  }
}

/** The mock-up in card is to be made and saved. */
export class MockUpEvent extends Event {
  constructor(readonly mockUp: MockUp) {
    super('fl-mock-up', UPWARDS);
  }
}

export class WishEvent extends Event {
  constructor(readonly patch: Partial<Wishes>) {
    super('fl-wish', UPWARDS);
  }
}

declare global {
  interface HTMLElementEventMap {
    'fl-command': CommandEvent;
    'fl-point': PointEvent;
    'fl-choose': ChooseEvent;
    'fl-verb': VerbEvent;
    'fl-view': ViewEvent;
    'fl-sample': SampleEvent;
    'fl-sharp': SharpEvent;
    'fl-simplify': SimplifyEvent;
    'fl-core-file': CoreFileEvent;
    'fl-sculpt-file': SculptFileEvent;
    'fl-part-file': PartFileEvent;
    'fl-offcut-file': OffcutFileEvent;
    'fl-mock-up': MockUpEvent;
    'fl-wish': WishEvent;
    'fl-files': FilesEvent;
    'fl-gluing-move': GluingMoveEvent;
  }
}
