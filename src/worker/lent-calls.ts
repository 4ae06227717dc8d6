/** A function that the other side has lent. */
type Lent = (...words: never[]) => unknown;

/**
 * Gives back what is lent for one call once that is answered. A function that crossed holds a port on both sides, and neither lets go of
 * it until this side's rubbish is cleared, which in a quiet worker may be never.
 * @param desk      what is asked, all of it by calls that answer later.
 * @param giveBack  called once for each function that was lent.
 */
export function givingBack<T extends object>(desk: T, giveBack: (lent: Lent) => void): T {
  return new Proxy(desk, {
    get:
      (_, name: string) =>
      async (...words: unknown[]): Promise<unknown> => {
        const given: (() => void)[] = [];
        const kept = words.map((word) => {
          if (typeof word !== 'function') return word;
          const { call, end } = untilEnded(word as Lent);
          given.push(() => {
            end();
            giveBack(word as Lent);
          });
          return call;
        });
        try {
          return await (desk as Record<string, (...of: unknown[]) => unknown>)[name](...kept);
        } finally {
          for (const give of given) give();
        }
      },
  });
}

/** A job that was called off goes on for a while and may still tell: nobody hears it. */
function untilEnded(lent: Lent): { readonly call: Lent; readonly end: () => void } {
  let isEnded = false;
  return {
    call: (...words) => (isEnded ? Promise.resolve() : lent(...words)),
    end: () => (isEnded = true),
  };
}
