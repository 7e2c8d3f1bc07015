/** The most pieces of a part one line or one use may say. Our own bound, against a slip of the finger. */
export const mostPieces = 100_000
