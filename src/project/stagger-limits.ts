/** Least and most by which the seams of a sheet lie beside those of the sheet that is seen, mm [J]: less is a cut beside a cut. */
export const LEAST_STAGGER_MM = 1;
export const MOST_STAGGER_MM = 200;

/** Whether seams can be moved so far, to one side or the other. */
export const isStagger = (mm: number): boolean => Math.abs(mm) >= LEAST_STAGGER_MM && Math.abs(mm) <= MOST_STAGGER_MM;
