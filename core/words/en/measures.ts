import type { Box } from '../../measures/measures.ts'

/** Sizes and weights, of clocks and of the places they stand at. */
export const measures = {
  names: { heightMm: 'Height', widthMm: 'Width', depthMm: 'Depth' } satisfies Record<keyof Box, string>,
  side: {
    heightMm: size => `${size} high`,
    widthMm: size => `${size} wide`,
    depthMm: size => `${size} deep`,
  } satisfies Record<keyof Box, (size: string) => string>,
  weight: 'Weight',
  weightHint: 'With its weights and pendulum.',
  size: 'Size and weight',
  open: 'Measure the clock',
  title: 'Measure the clock',
  advice: 'What nobody measured stays empty.',
  send: 'Save',
  said: 'The size of the clock is written down.',
}
