/// <reference lib="webworker" />
import * as Comlink from 'comlink';
import { receptionOf } from './reception.ts';

// The sculpt is on the bench before all that works on it has been loaded.
Comlink.expose(receptionOf(async () => (await import('./start-workshop.ts')).startWorkshop()));
