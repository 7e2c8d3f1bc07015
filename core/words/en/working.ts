type Values = Readonly<Record<string, string | number>>

/** How a figure came about, one step a sentence. */
export const workingSteps = {
  hoursAtRate: (v: Values) => `${v.hours} h at ${v.rate} an hour`,
  piecesAtPrice: (v: Values) => `${v.quantity} at ${v.unit} each`,
} satisfies Record<string, (values: Values) => string>
