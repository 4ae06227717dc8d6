/// <reference lib="webworker" />
import '../../src/worker/worker.ts';

// The worker of the window, which falls ill when it is told so: it goes round for ever, or ends itself, or only stands still for a while.
self.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  if (data === 'for ever') for (;;);
  if (data === 'end') self.close();
  if (data !== 'a while') return;
  const end = performance.now() + 600;
  while (performance.now() < end);
});
