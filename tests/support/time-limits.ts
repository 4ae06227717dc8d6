// The only limits of time there are in the tests. They end what hangs; no test may fail because a machine is slow or busy, so none sets its own.

/** Longest time of one test, or of what comes before a file's tests, ms. */
export const TEST_MS = 300_000;

/** Longest wait for one thing to come true, ms: less than a test has, so that it is the wait that tells what did not come. */
export const WAIT_MS = 120_000;
