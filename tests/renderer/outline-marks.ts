import type { Outline, OutlineMark, OutlineTransform } from '../../electron/papers/parts/outlines.ts'

type Attributes = Readonly<Record<string, string>>

const attributesOf = (text: string): Attributes =>
  Object.fromEntries(
    [...text.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, name = '', value = '']) => [name, value]),
  )

const number = (attributes: Attributes, name: string): number => Number(attributes[name] ?? 0)

const rounded = (n: number): number => Math.round(n * 1000) / 1000

/** `outer` after `inner`, each [a b c d e f] as PDF and SVG write a matrix. */
const times = (o: OutlineTransform, i: OutlineTransform): OutlineTransform => [
  rounded(o[0] * i[0] + o[2] * i[1]),
  rounded(o[1] * i[0] + o[3] * i[1]),
  rounded(o[0] * i[2] + o[2] * i[3]),
  rounded(o[1] * i[2] + o[3] * i[3]),
  rounded(o[0] * i[4] + o[2] * i[5] + o[4]),
  rounded(o[1] * i[4] + o[3] * i[5] + o[5]),
]

const same: OutlineTransform = [1, 0, 0, 1, 0, 0]

/** The matrix of one step of a `transform` attribute. */
function step(name: string, values: readonly number[]): OutlineTransform {
  const [first = 0, second = 0, third = 0] = values
  if (name === 'translate') return [1, 0, 0, 1, first, second]
  if (name === 'scale') return [first, 0, 0, values.length > 1 ? second : first, 0, 0]
  if (name !== 'rotate') throw new Error(`the outlines know no ${name}`)
  const [cos, sin] = [Math.cos((first * Math.PI) / 180), Math.sin((first * Math.PI) / 180)]
  const about = times([1, 0, 0, 1, second, third], [cos, sin, -sin, cos, 0, 0])
  return times(about, [1, 0, 0, 1, -second, -third])
}

const transformOf = ({ transform = '' }: Attributes): OutlineTransform =>
  [...transform.matchAll(/(\w+)\(([^)]*)\)/g)]
    .map(([, name = '', values = '']) => step(name, values.split(/[\s,]+/).map(Number)))
    .reduce(times, same)

const oval = (cx: number, cy: number, rx: number, ry: number): string =>
  `M${cx - rx} ${cy}a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0Z`

function pathOf(tag: string, attributes: Attributes): string {
  const [cx, cy, r] = ['cx', 'cy', 'r'].map(name => number(attributes, name)) as [number, number, number]
  if (tag === 'circle') return oval(cx, cy, r, r)
  if (tag === 'ellipse') return oval(cx, cy, number(attributes, 'rx'), number(attributes, 'ry'))
  return attributes.d ?? ''
}

function markOf(tag: string, attributes: Attributes, text: string, outer: OutlineTransform): OutlineMark {
  const own = times(outer, transformOf(attributes))
  const placed = own.every((value, i) => value === same[i]) ? {} : { by: own }
  if (tag === 'text')
    return {
      ...placed,
      text,
      x: number(attributes, 'x'),
      y: number(attributes, 'y'),
      size: number(attributes, 'font-size'),
    }
  const fill = attributes.class
  return {
    ...placed,
    d: pathOf(tag, attributes),
    width: number(attributes, 'stroke-width'),
    ...(fill === 'paper' || fill === 'ink' ? { fill } : {}),
    ...(attributes['stroke-dasharray'] ? { dashed: true } : {}),
  }
}

/** The marks of a drawing of the pages, in order, with every transform worked out. Throws for an element the outlines do not know. */
export function outlineOf(markup: string): Outline {
  const marks: OutlineMark[] = []
  const open: OutlineTransform[] = [same]
  for (const [, close, tag = '', rest = '', alone, text = ''] of markup.matchAll(
    /<(\/?)(\w+)([^>]*?)(\/?)>([^<]*)/g,
  )) {
    const outer = open.at(-1) ?? same
    if (close) {
      if (tag === 'g') open.pop()
    } else if (tag === 'g') open.push(times(outer, transformOf(attributesOf(rest))))
    else if (['path', 'circle', 'ellipse', 'text'].includes(tag))
      marks.push(markOf(tag, attributesOf(rest), text, outer))
    else if (tag !== 'svg') throw new Error(`the outlines know no <${tag}>${alone}`)
  }
  return marks
}
