import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from '@playwright/test'
import { hashOf } from '../../db/file/files-beside.ts'
import { places } from '../../electron/places.ts'
import { browserPath, quiet } from '../e2e/browser.ts'

const [width, height] = [640, 480]
const folder = join(places.assets, 'demo', 'photographs')

const range = (count: number): number[] => Array.from({ length: count }, (_, index) => index)

/** A point on a circle, in degrees clockwise from the top. */
const at = (x: number, y: number, radius: number, degrees: number): string => {
  const angle = ((degrees - 90) * Math.PI) / 180
  return `${(x + radius * Math.cos(angle)).toFixed(1)} ${(y + radius * Math.sin(angle)).toFixed(1)}`
}

/** A surface lit from the upper left. */
const surface = (id: string, light: string, dark: string) =>
  `<linearGradient id="${id}" x1="0" y1="0" x2="1" y2="1"><stop offset="0" stop-color="${light}"/><stop offset="1" stop-color="${dark}"/></linearGradient>`

const surfaces = [
  surface('brass', '#e3c982', '#9a7a35'),
  surface('silver', '#eceae4', '#b3b1ab'),
  surface('wood', '#7b4526', '#3b1d0f'),
  surface('steel', '#aeb6bd', '#5d656d'),
  surface('cream', '#f4ecd6', '#cfc2a0'),
  surface('bench', '#6d6a63', '#2e2c29'),
].join('')

const ground = '<rect width="640" height="480" fill="url(#bench)"/>'

const minutes = (x: number, y: number, radius: number) =>
  range(60)
    .map(minute => {
      const inner = radius - (minute % 5 === 0 ? 14 : 7)
      return `<path d="M${at(x, y, inner, minute * 6)} L${at(x, y, radius, minute * 6)}" stroke="#1d1b18" stroke-width="${minute % 5 === 0 ? 4 : 1.6}"/>`
    })
    .join('')

const figures = (x: number, y: number, radius: number) =>
  range(12)
    .map(hour => {
      const [left, top] = at(x, y, radius, (hour + 1) * 30).split(' ')
      return `<text x="${left}" y="${Number(top) + 12}" font-family="serif" font-size="34" text-anchor="middle" fill="#1d1b18">${hour + 1}</text>`
    })
    .join('')

const screw = (x: number, y: number, turn: number) =>
  `<g transform="translate(${x} ${y}) rotate(${turn})"><circle r="15" fill="url(#steel)"/><rect x="-13" y="-2" width="26" height="4" fill="#2b2f33"/></g>`

const pivot = (x: number, y: number) =>
  `<circle cx="${x}" cy="${y}" r="16" fill="#6f5726"/><circle cx="${x}" cy="${y}" r="7" fill="url(#steel)"/>`

const punched = (x: number, y: number) =>
  range(7)
    .map(
      mark =>
        `<circle cx="0" cy="0" r="4.5" fill="#4d3b16" transform="translate(${at(x, y, 29, mark * 51)})"/>`,
    )
    .join('')

const wheel = (x: number, y: number, radius: number, teeth: number) =>
  `<g transform="translate(${x} ${y})"><circle r="${radius - 12}" fill="url(#brass)" stroke="#6f5726" stroke-width="3"/>${range(
    teeth,
  )
    .map(
      tooth =>
        `<rect x="-6" y="${-radius}" width="12" height="18" rx="4" fill="url(#brass)" stroke="#6f5726" transform="rotate(${(tooth * 360) / teeth})"/>`,
    )
    .join('')}<circle r="${radius / 3}" fill="#6d5524"/></g>`

const dot = (x: number, y: number) => `<circle cx="${x}" cy="${y}" r="6" fill="#2c2210"/>`

const scratched = 'M436 300 L498 352 M442 296 L470 318'

/** What each picture shows. Drawn for the demonstration; after no clock of anybody's. */
const pictures: Readonly<Record<string, string>> = {
  'dial-scratch': `<rect width="640" height="480" fill="url(#wood)"/><circle cx="320" cy="240" r="222" fill="url(#brass)"/>
    <circle cx="320" cy="240" r="205" fill="url(#silver)"/>${minutes(320, 240, 198)}${figures(320, 240, 158)}
    <circle cx="240" cy="290" r="11" fill="#26221d"/><circle cx="400" cy="290" r="11" fill="#26221d"/><circle cx="320" cy="322" r="11" fill="#26221d"/>
    <path d="M320 240 L250 172 M320 240 L352 96" stroke="#20304a" stroke-width="7" stroke-linecap="round"/>
    <path d="${scratched}" stroke="#6b5a2c" stroke-width="2.4" fill="none"/>`,
  'case-foot': `${ground}<path d="M60 0 L580 0 L580 330 L60 330 Z" fill="url(#wood)"/><path d="M40 330 H600 V372 H40 Z" fill="#58301a"/>
    <path d="M70 372 C70 430 118 452 170 446 L176 372 Z" fill="url(#brass)"/><path d="M470 372 L476 446 C528 452 572 430 572 372 Z" fill="url(#brass)"/>
    <path d="M72 374 C100 384 140 380 178 376" stroke="#e9e2cc" stroke-width="6" fill="none"/>
    <path d="M96 330 L128 268 L182 330" fill="#3a2011" stroke="#c9a579" stroke-width="2"/>`,
  'back-plate': `${ground}<rect x="70" y="30" width="500" height="420" rx="10" fill="url(#brass)"/>
    ${[
      [150, 90],
      [490, 90],
      [150, 390],
      [490, 390],
    ]
      .map(([x, y], i) => screw(x ?? 0, y ?? 0, i * 37))
      .join('')}
    ${[
      [250, 190],
      [320, 300],
      [400, 180],
      [420, 330],
    ]
      .map(([x, y]) => pivot(x ?? 0, y ?? 0))
      .join('')}${punched(250, 190)}${punched(400, 180)}`,
  'chime-barrel': `${ground}<rect x="60" y="170" width="520" height="150" rx="14" fill="url(#brass)"/>
    ${range(8)
      .map(row =>
        range(11)
          .map(pin =>
            (pin * 5 + row * 3) % 4 === 0
              ? `<circle cx="${92 + pin * 46}" cy="${186 + row * 17}" r="4" fill="#4d3b16"/>`
              : '',
          )
          .join(''),
      )
      .join('')}
    ${range(8)
      .map(
        tail =>
          `<path d="M${110 + tail * 58} 172 L${102 + tail * 58} 66" stroke="url(#steel)" stroke-width="9" stroke-linecap="round"/><rect x="${86 + tail * 58}" y="44" width="34" height="26" rx="4" fill="#d9d3c4"/>`,
      )
      .join('')}
    <path d="M92 186 m-14 0 a14 14 0 1 0 28 0 a14 14 0 1 0 -28 0" fill="none" stroke="#fff" stroke-width="3"/>`,
  'motion-work': `${ground}<rect x="40" y="24" width="560" height="432" rx="10" fill="url(#silver)"/>
    ${wheel(240, 240, 170, 40)}${wheel(466, 240, 74, 16)}
    ${dot(386, 240)}${dot(420, 226)}${dot(420, 254)}`,
  'painted-dial': `<rect width="640" height="480" fill="url(#wood)"/><rect x="120" y="120" width="400" height="400" fill="url(#cream)"/>
    <path d="M120 120 A200 170 0 0 1 520 120 Z" fill="#2e4a6b"/><circle cx="320" cy="72" r="44" fill="#f0dfae"/>
    ${minutes(320, 330, 186)}${figures(320, 330, 148)}
    <path d="M286 96 l14 -9 l6 12 l-13 8 Z M318 52 l10 -4 l4 10 l-11 4 Z M340 88 l8 -8 l10 6 l-9 10 Z" fill="#d9cfb4"/>`,
}

const scene = (drawn: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><defs>${surfaces}</defs>${drawn}</svg>`

/** `node tests/shots/demo-photographs.ts`: draws the demonstration's photographs, and says how a day file names them. */
async function main(): Promise<void> {
  mkdirSync(folder, { recursive: true })
  const browser = await chromium.launch({ executablePath: browserPath(), args: [...quiet] })
  try {
    const page = await browser.newPage({ viewport: { width, height } })
    for (const [name, drawn] of Object.entries(pictures)) {
      await page.setContent(`<style>body { margin: 0 }</style>${scene(drawn)}`)
      const bytes = await page.screenshot({ type: 'jpeg', quality: 70 })
      writeFileSync(join(folder, `${name}.jpg`), bytes)
      console.log(name, JSON.stringify({ hash: hashOf(bytes), mediaType: 'image/jpeg', bytes: bytes.length }))
    }
  } finally {
    await browser.close()
  }
}

await main()
