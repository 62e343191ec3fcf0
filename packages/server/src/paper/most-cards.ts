/** A county's worth in one file; more go into several. */
export const MOST_CARDS = 5000;
