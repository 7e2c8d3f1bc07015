/** A piece of XML: an element with its attributes and what is in it. */
export interface Element {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly inside: string | readonly Element[]
}

type Inside = string | readonly (Element | readonly Element[] | undefined)[]

/** An element; pieces that are undefined are left out, lists laid out. */
export const element = (
  name: string,
  inside: Inside,
  attributes: Readonly<Record<string, string>> = {},
): Element => ({
  name,
  attributes,
  inside: typeof inside === 'string' ? inside : inside.flat().filter(piece => piece !== undefined),
})

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** Characters that XML 1.0 (§2.2) has no place for, lone halves of pairs among them. */
const unwritable = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu

const escaped = (text: string): string =>
  text
    .replace(unwritable, '\u{FFFD}')
    .replace(/[&<>"]/g, sign => entities[sign] ?? sign)
    .replaceAll('\r', '&#13;')

const attributesText = (attributes: Element['attributes']): string =>
  Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${escaped(value)}"`)
    .join('')

function written({ name, attributes, inside }: Element, indent: string): string {
  const open = `${indent}<${name}${attributesText(attributes)}>`
  if (typeof inside === 'string') return `${open}${escaped(inside)}</${name}>\n`
  return `${open}\n${inside.map(piece => written(piece, `${indent}  `)).join('')}${indent}</${name}>\n`
}

/** The element as a whole document, the same text each time. */
export const xmlText = (root: Element): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n${written(root, '')}`
