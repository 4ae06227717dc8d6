/** `1 face`, `7 faces`. */
export const several = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
