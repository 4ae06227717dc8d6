/** Rounding that must not turn 8 mm into 7.9, in tenths of a mm. */
const ROUNDING = 1e-6;

/** The greatest whole tenth of a mm that is no more than `mm`, at least 0. */
export const greatestMm = (mm: number): number => Math.max(0, Math.floor(10 * mm + ROUNDING) / 10);

/** A length to a tenth of a mm. */
export const mmText = (mm: number): string => `${Math.round(mm * 10) / 10} mm`;
