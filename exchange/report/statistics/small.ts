/** Below so many a mean or a rate is said to be of a small sample. Common practice, no source. */
export const SMALL = 30;

/**
 * Below so many single values a capability figure is said to be of a small sample. Handbooks of statistical process control
 * ask for about a hundred (from memory).
 */
export const SMALL_FOR_CAPABILITY = 100;
