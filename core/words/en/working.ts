type Values = Readonly<Record<string, string | number>>

/** How a figure came about, one step a sentence. */
export const workingSteps = {
  trainsSupposed: (v: Values) =>
    `trains not looked at yet: ${v.trains} supposed, as is usual for such a clock`,
  bookHours: (v: Values) => `${v.hours} h by the price book`,
  furtherHours: (v: Values) => `${v.hours} h beyond the book`,
  hoursAtRate: (v: Values) => `${v.hours} h at ${v.rate} an hour`,
  piecesAtPrice: (v: Values) => `${v.quantity} at ${v.unit} each`,
  minimumCharge: (v: Values) => `raised to the minimum charge of ${v.minimum}`,
  rush: (v: Values) => `${v.percent} % for rush work, ${v.added}`,
  markup: (v: Values) => `cost ${v.cost} plus ${v.percent} %`,
  storesPrice: (v: Values) => `${v.price} each, as the stores have it`,
  outsideMarkup: (v: Values) => `outside work at ${v.cost} plus ${v.percent} %`,
  callOut: (v: Values) => `house call ${v.fee}`,
  distance: (v: Values) => `${v.distance} beyond the free distance at ${v.rate}`,
  furtherClocks: (v: Values) => `${v.clocks} further clocks at ${v.each} each`,
  estimateFee: () => 'fee for an estimate by the price book',
  feeCredited: () => 'fee for an earlier estimate, paid and taken off',
} satisfies Record<string, (values: Values) => string>
