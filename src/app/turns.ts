import { nextTask } from '../base/next-task.ts';

let last: Promise<void> = Promise.resolve();

/**
 * Resolves in a task of its own, after all who asked before. Elements that wait for their turn before they draw never hold the window up
 * together, however much of the job changed at once.
 */
export function nextTurn(): Promise<void> {
  last = last.then(nextTask);
  return last;
}
