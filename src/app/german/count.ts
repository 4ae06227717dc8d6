/** `1 Naht`, `2 Nähte`, with a no-break space. */
export const count = (n: number, one: string, many: string): string => `${n}\u00a0${n === 1 ? one : many}`;

export const pieces = (n: number): string => count(n, 'Stück', 'Stücke');
export const sheets = (n: number): string => count(n, 'Platte', 'Platten');
export const pages = (n: number): string => count(n, 'Seite', 'Seiten');
export const steps = (n: number): string => count(n, 'Schritt', 'Schritte');
export const edges = (n: number): string => count(n, 'Kante', 'Kanten');
export const seams = (n: number): string => count(n, 'Naht', 'Nähte');
