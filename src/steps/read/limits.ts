/**
 * The most triangles a model may have. Connections, boxes and pieces take about 400 bytes for each, so that this many still fit into the
 * memory a browser gives to one page; no foam pattern needs more than a fiftieth of it.
 */
export const MOST_TRIANGLES = 4_000_000;

/** The most corners a model may list: a soup of separate triangles has three for each. */
export const MOST_CORNERS = 3 * MOST_TRIANGLES;

/** The most corners of one face. Cutting a face into triangles may take time with the square of its corners. */
export const MOST_FACE_CORNERS = 20_000;

/** The largest coordinate, in units of the file. Beyond it even doubles are coarser than the steps of a sculpt near the origin. */
export const MOST_COORDINATE = 1e12;

/** The smallest diagonal of a model, in units of the file. Below it areas and volumes, which are squares and cubes, come near the end of doubles. */
export const LEAST_DIAGONAL = 1e-30;
