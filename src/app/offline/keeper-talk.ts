/** What a window says to the worker that keeps its files. */
export type KeeperRequest =
  /** The version that waits takes over from the one in force. */
  | { readonly kind: 'take-up' }
  /** Is the window of the version in force? Answered through the port that comes with it, by a {@link KeeperReply}. `entry`: address of the window's first script. */
  | { readonly kind: 'begun'; readonly entry: string };

export interface KeeperReply {
  /** False for a window of another version than the one in force. */
  readonly isOfVersion: boolean;
}

/** A file of the app that is kept. */
export interface KeptFile {
  /** From the folder of the app. */
  readonly url: string;
  /** Changes with its bytes; null where its name already does. */
  readonly revision: string | null;
}

/** Where the worker stands: in the folder of the app, since it answers for its own folder alone. */
export const KEEPER = 'keeper.js';
