/** How the bytes of a file can be read as letters. */
export const encodings = ['utf-8', 'windows-1252'] as const
export type Encoding = (typeof encodings)[number]

/** What can stand between the cells of a line. */
export const delimiters = [',', ';', '\t'] as const
export type Delimiter = (typeof delimiters)[number]

/**
 * The text without what is inside quotes (RFC 4180: a quote inside is doubled), as far as the first lines tell: commas
 * and line breaks inside them separate nothing.
 */
const unquoted = (text: string) => text.slice(0, 20_000).replaceAll(/"(?:[^"]|"")*"/g, '')

/** What most likely stands between the cells: what the first line has most of; a comma where it has none. */
export function likelyDelimiter(text: string): Delimiter {
  const [first = ''] = unquoted(text).split(/\r\n|\n|\r/, 1)
  const count = (delimiter: string) => first.split(delimiter).length
  return delimiters.reduce((best, one) => (count(one) > count(best) ? one : best))
}
