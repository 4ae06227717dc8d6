/** A tool tray of our own, in centimetres: 18 wide, 12 deep, 10 high, open but for a lid over the hindmost 5 cm. */
export const TRAY_MM = { width: 180, depth: 120, height: 100, lid: 50 };

/** Six panels: floor, four walls, half a lid; the side walls have a fifth corner where the lid ends. */
export const TRAY_OBJ = `# open tray, cm
o tray
v -9 0 6
v 9 0 6
v 9 0 -6
v -9 0 -6
v -9 10 6
v 9 10 6
v 9 10 -6
v -9 10 -6
v -9 10 -1
v 9 10 -1
f 4 3 2 1
f 1 2 6 5
f 3 4 8 7
f 2 3 7 10 6
f 4 1 5 9 8
f 9 10 7 8
`;

/** Edges between two panels; all of them fold by 90 degrees. */
export const TRAY_FOLDS = 11;
