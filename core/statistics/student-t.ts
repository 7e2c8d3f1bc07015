const z = 1.959964

/**
 * The 97.5 % quantile of Student's t: 95 % lie within ± this many standard errors. Cornish–Fisher expansion about the normal
 * quantile (Abramowitz and Stegun, 26.7.5); within 0.02 of the tables from three degrees of freedom on.
 */
export function studentT(freedom: number): number {
  const first = (z ** 3 + z) / 4
  const second = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96
  const third = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384
  return z + first / freedom + second / freedom ** 2 + third / freedom ** 3
}
