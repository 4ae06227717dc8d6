/** The most letters of a group's name that are kept. */
const MOST_LETTERS = 200;

/**
 * Names that faces of a file stand under. An OBJ has three kinds that are in force at once, object, group and material; a face's name
 * is those of them that are set, parted by ` / `.
 */
export class GroupNames {
  readonly names: string[] = [];
  readonly #known = new Map<string, number>();
  readonly #inForce = { object: '', group: '', material: '' };
  #current = -1;

  /** Index of the name in force, or -1 where none is. */
  get current(): number {
    return this.#current;
  }

  /** @param name may be empty: the kind is then no longer in force. */
  set(kind: 'object' | 'group' | 'material', name: string): void {
    this.#inForce[kind] = name.slice(0, MOST_LETTERS);
    const { object, group, material } = this.#inForce;
    const whole = [object, group === object ? '' : group, material].filter((part) => part !== '').join(' / ');
    if (whole === '') {
      this.#current = -1;
      return;
    }
    let index = this.#known.get(whole);
    if (index === undefined) {
      index = this.names.length;
      this.names.push(whole);
      this.#known.set(whole, index);
    }
    this.#current = index;
  }
}
