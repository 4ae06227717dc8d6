import { beforeEach, expect, it, vi } from 'vitest';
import { Keeper, type Keepers } from '../../../src/app/offline/keeper.ts';
import type { KeeperRequest } from '../../../src/app/offline/keeper-talk.ts';

/** A worker that knows the window that asks it, or does not. */
class Worker extends EventTarget {
  state = 'installing';
  readonly heard: string[] = [];
  constructor(readonly knows = true) {
    super();
  }
  become(state: string): void {
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }
  postMessage(request: KeeperRequest, ports: MessagePort[] = []): void {
    this.heard.push(request.kind);
    if (request.kind === 'take-up') this.become('activated');
    ports[0]?.postMessage({ isOfVersion: this.knows });
  }
}

class Registration extends EventTarget {
  installing: Worker | null = null;
  waiting: Worker | null = null;
  active: Worker | null = null;
  readonly update = vi.fn(() => Promise.resolve());
  found(worker: Worker): void {
    this.installing = worker;
    this.dispatchEvent(new Event('updatefound'));
  }
}

class Browser extends EventTarget {
  controller: Worker | null = null;
  readonly registration = new Registration();
  readonly register = vi.fn(() => Promise.resolve(this.registration));
  control(worker: Worker): void {
    this.controller = worker;
    this.dispatchEvent(new Event('controllerchange'));
  }
}

let browser: Browser;
let told: string[];
let takeOver: (() => Promise<void>) | null;
const keeperOf = (): Keeper =>
  new Keeper(browser as unknown as Keepers, 'index-1.js', {
    onKept: (isFirst) => told.push(isFirst ? 'kept now' : 'kept'),
    onNewer: (take, isElsewhere) => {
      told.push(isElsewhere ? 'newer elsewhere' : 'newer');
      takeOver = take;
    },
  });

beforeEach(() => {
  [browser, told, takeOver] = [new Browser(), [], null];
});

it('tells when all is kept for the first time, which is no new version', async () => {
  const first = new Worker();
  browser.registration.installing = first;
  await keeperOf().begin();
  first.become('installed');
  first.become('activated');
  browser.control(first);
  await vi.waitFor(() => expect(first.heard).toEqual(['begun']));
  expect(told).toEqual(['kept now']);
});

it('offers a version that came meanwhile, and puts it in force when it is taken up', async () => {
  browser.controller = browser.registration.active = new Worker();
  await keeperOf().begin();
  const second = new Worker();
  browser.registration.found(second);
  expect(told).toEqual(['kept']);
  second.become('installed');
  expect(told).toEqual(['kept', 'newer']);
  expect(second.heard).toEqual([]);
  await takeOver?.();
  expect(second.heard).toEqual(['take-up']);
  browser.control(second);
  expect(told).toEqual(['kept', 'newer']);
});

it('offers one that waited since the visit before', async () => {
  browser.controller = browser.registration.active = new Worker();
  const waiting = (browser.registration.waiting = new Worker());
  waiting.state = 'installed';
  await keeperOf().begin();
  expect(told).toEqual(['kept', 'newer']);
});

it('tells a window that another has taken up a version it is not of', async () => {
  browser.controller = browser.registration.active = new Worker();
  await keeperOf().begin();
  browser.control(new Worker(false));
  await vi.waitFor(() => expect(told).toEqual(['kept', 'newer elsewhere']));
});

it('begins anew where it was broken off, and looks for versions no more than hourly', async () => {
  browser.register.mockRejectedValueOnce(new TypeError('no network'));
  const keeper = keeperOf();
  await expect(keeper.begin()).rejects.toThrow('no network');
  browser.registration.active = new Worker();
  await keeper.lookAgain();
  expect(told).toEqual(['kept']);
  await keeper.lookAgain();
  expect(browser.registration.update).not.toHaveBeenCalled();
  vi.useFakeTimers({ now: Date.now() + 3_600_000 });
  await keeper.lookAgain();
  vi.useRealTimers();
  expect(browser.registration.update).toHaveBeenCalledOnce();
});
