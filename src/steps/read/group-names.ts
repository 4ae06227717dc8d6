import { shownText } from '../../base/shown-text.ts';

/** The most letters of a group's name that are kept. */
const MOST_LETTERS = 200;

/**
 * Names that faces of a file stand under. An OBJ has three kinds that are in force at once, object, group and material; a face's name
 * is those of them that are set, parted by ` / `.
 */
export class GroupNames {
  /** Names that were asked for, in that order. */
  readonly names: string[] = [];
  readonly #known = new Map<string, number>();
  readonly #inForce = { object: '', group: '', material: '' };
  #current: number | undefined = -1;

  /** Index of the name in force, or -1 where none is. Only names that are asked for get an index. */
  get current(): number {
    this.#current ??= this.#indexInForce();
    return this.#current;
  }

  /** @param name may be empty: the kind is then no longer in force. What cannot be shown in it becomes a replacement sign. */
  set(kind: 'object' | 'group' | 'material', name: string): void {
    this.#inForce[kind] = shownText(name.slice(0, MOST_LETTERS)).trim();
    this.#current = undefined;
  }

  #indexInForce(): number {
    const { object, group, material } = this.#inForce;
    const whole = [object, group === object ? '' : group, material].filter((part) => part !== '').join(' / ');
    if (whole === '') return -1;
    const known = this.#known.get(whole);
    if (known !== undefined) return known;
    this.#known.set(whole, this.names.length);
    return this.names.push(whole) - 1;
  }
}
