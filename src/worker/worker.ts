/// <reference lib="webworker" />
import * as Comlink from 'comlink';
import { trustOwnScripts } from '../base/own-scripts.ts';
import { answerBeats } from './heartbeat.ts';
import { givingBack } from './lent-calls.ts';
import { receptionOf } from './reception.ts';

// It starts threads of its own, to lay pieces flat.
trustOwnScripts();
answerBeats(self);
// The sculpt is on the bench before all that works on it has been loaded.
const reception = receptionOf(async () => (await import('./start-workshop.ts')).startWorkshop());
Comlink.expose(givingBack(reception, (lent) => (lent as unknown as Comlink.ProxyMethods)[Comlink.releaseProxy]()));
