/** When tax is to be accounted for: in the period of the invoice, or of the payments for it. */
export const taxDues = ['invoice', 'payment'] as const
export type TaxDue = (typeof taxDues)[number]
