const prefix = 'countwheel:'

/** What the QR code on a repair's papers and tags says. */
export const repairCode = ({ number }: { readonly number: string | number }): string => `${prefix}${number}`

/** What was typed or scanned, without blanks around it: of the text of a QR code the repair's number alone, anything else as it is. */
export function typedOrScanned(text: string): string {
  const plain = text.trim()
  return plain.startsWith(prefix) ? plain.slice(prefix.length) : plain
}
