/** Foam that stays behind a pocket, mm: less shows through and tears [J]. */
export const LEAST_LEFT_MM = 2;
