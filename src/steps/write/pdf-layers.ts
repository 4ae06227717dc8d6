import type { jsPDF } from 'jspdf';

/** What of jspdf's own workings is used here; it has no call for layers. Held by a test, and the package's version is pinned. */
interface Workings {
  readonly write: (...parts: readonly unknown[]) => void;
  readonly out: (text: string) => void;
  readonly newObjectDeferred: () => number;
  readonly newObjectDeferredBegin: (id: number, doOutput: boolean) => void;
  readonly events: { subscribe(topic: string, callback: () => void): void };
}

export interface PageLayers {
  /** Opens a layer by its number and returns what closes it. */
  readonly open: (layer: number) => () => void;
  /** Adds operators to the content of the page. */
  readonly write: (operators: string) => void;
}

/**
 * Gives a document layers that viewers can switch: optional content groups (ISO 32000-1, 8.11, PDF 1.5).
 * @param titles  names of the layers, in the order of their numbers.
 */
export function addPaperLayers(doc: jsPDF, titles: readonly string[]): PageLayers {
  const inner = doc as unknown as {
    readonly internal: Pick<Workings, 'write' | 'out' | 'newObjectDeferred' | 'newObjectDeferredBegin' | 'events'>;
    readonly __private__: { setPdfVersion(version: string): void };
  };
  const { internal } = inner;
  inner.__private__.setPdfVersion('1.6');
  const ids: number[] = [];
  // Numbers reserved before the pages are out would fall into the page tree.
  internal.events.subscribe('postPutPages', () => {
    for (let i = 0; i < titles.length; i += 1) ids.push(internal.newObjectDeferred());
  });
  internal.events.subscribe('postPutResources', () => {
    for (const [i, title] of titles.entries()) {
      internal.newObjectDeferredBegin(ids[i], true);
      internal.out(`<< /Type /OCG /Name (${title}) >>`);
      internal.out('endobj');
    }
  });
  internal.events.subscribe('putXobjectDict', () => {
    const named = titles.map((_, i) => `/L${i} ${ids[i]} 0 R`).join(' ');
    internal.out(`>>\n/Properties << ${named}`);
  });
  internal.events.subscribe('putCatalog', () => {
    const all = ids.map((id) => `${id} 0 R`).join(' ');
    internal.out(`/OCProperties << /OCGs [${all}] /D << /Order [${all}] /ON [${all}] /Name (Layers) >> >>`);
  });
  return {
    open: (layer) => {
      internal.write(`/OC /L${layer} BDC`);
      return () => internal.write('EMC');
    },
    write: (operators) => internal.write(operators),
  };
}
