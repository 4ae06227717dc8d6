/** A name of a size, a shape or a figure in the words of the screen: `outer_diameter` and `outer_diameter_mm` are `outer diameter`. */
export const spokenName = (name: string): string => name.replace(/_(mm|mm2|mm3|deg)$/, '').replaceAll('_', ' ');
