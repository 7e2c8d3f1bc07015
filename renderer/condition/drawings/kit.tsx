import type { ReactNode } from 'react'

/** A place on a drawing, in its own units: 0…240 from the left, 0…320 from the top. */
export type Place = readonly [x: number, y: number]

/** The size of every drawing. */
export const sheet = { width: 240, height: 320 } as const

/** The middle line most clocks are drawn about. */
export const mid = sheet.width / 2

const rounded = (n: number) => Math.round(n * 100) / 100

/** The place `r` away from a middle, at `turn` of a whole turn clockwise from the top. */
export const around = ([x, y]: Place, r: number, turn: number): Place => [
  rounded(x + r * Math.sin(turn * 2 * Math.PI)),
  rounded(y - r * Math.cos(turn * 2 * Math.PI)),
]

/** A path through places. */
export const through = (places: readonly Place[], closed = true): string =>
  `M${places.map(([x, y]) => `${x} ${y}`).join('L')}${closed ? 'Z' : ''}`

/** A rectangle from corner to corner. */
export const box = (x0: number, y0: number, x1: number, y1: number): string =>
  `M${x0} ${y0}H${x1}V${y1}H${x0}Z`

/** A rectangle about the middle line, `half` to each side. */
export const slab = (half: number, y0: number, y1: number): string => box(mid - half, y0, mid + half, y1)

/** A rectangle about the middle line with a round top that springs at `y0`; `arch` is half as wide as the round. */
export const arched = (half: number, arch: number, y0: number, y1: number): string =>
  `M${mid - half} ${y1}V${y0}H${mid - arch}A${arch} ${arch} 0 0 1 ${mid + arch} ${y0}H${mid + half}V${y1}Z`

/** Short lines outwards, `count` to the whole turn. */
export const spokes = (at: Place, from: number, to: number, count: number): string =>
  Array.from({ length: count }, (_, i) =>
    through([around(at, from, i / count), around(at, to, i / count)], false),
  ).join('')

/** A main contour; what was drawn before it lies behind and is hidden. */
export const Contour = ({ d }: { d: string }) => <path className="paper" strokeWidth={1.75} d={d} />

/** Lines upon it. */
export const Lines = ({ d }: { d: string }) => <path strokeWidth={1.25} d={d} />

/** What lies behind and is felt rather than seen. */
export const Hidden = ({ d }: { d: string }) => <path strokeWidth={1.25} strokeDasharray="3 3" d={d} />

/** A round thing that hides what lies behind. */
export const Round = ({ at: [cx, cy], r, main = false }: { at: Place; r: number; main?: boolean }) => (
  <circle className="paper" strokeWidth={main ? 1.75 : 1.25} cx={cx} cy={cy} r={r} />
)

/** An oval that hides what lies behind. */
export const Oval = ({ at: [cx, cy], rx, ry }: { at: Place; rx: number; ry: number }) => (
  <ellipse className="paper" strokeWidth={1.75} cx={cx} cy={cy} rx={rx} ry={ry} />
)

/** The same again on the other side of the middle line. */
export const Mirrored = ({ children }: { children: ReactNode }) => (
  <>
    {children}
    <g transform={`translate(${sheet.width} 0) scale(-1 1)`}>{children}</g>
  </>
)

/** A screw's head with its slot. */
export const Screw = ({ at, r = 4 }: { at: Place; r?: number }) => (
  <>
    <Round at={at} r={r} />
    <Lines d={through([around(at, r * 0.75, 0.12), around(at, r * 0.75, 0.62)], false)} />
  </>
)

/** A square for the key, in its hole. */
export const WindingSquare = ({ at: [x, y], r = 5 }: { at: Place; r?: number }) => (
  <>
    <Round at={[x, y]} r={r} />
    <Lines d={box(x - r * 0.45, y - r * 0.45, x + r * 0.45, y + r * 0.45)} />
  </>
)

/** A toothed wheel with arms. */
export function Wheel({ at, r, teeth, arms = 4 }: { at: Place; r: number; teeth: number; arms?: number }) {
  const depth = Math.min(5, r * 0.14)
  const rim = Array.from({ length: teeth * 4 }, (_, i) =>
    around(at, i % 4 < 2 ? r : r - depth, (i + (i % 2 ? -0.2 : 0.2)) / (teeth * 4)),
  )
  return (
    <>
      <path className="paper" strokeWidth={1.25} d={through(rim)} />
      {arms > 0 && (
        <>
          <Round at={at} r={(r - depth) * 0.82} />
          <Lines d={spokes(at, r * 0.2, (r - depth) * 0.82, arms)} />
        </>
      )}
      <Round at={at} r={Math.max(2, r * 0.2)} />
    </>
  )
}

/** A coil from the outside in, such as a gong or a mainspring. */
export function Coil({ at, from, to, turns }: { at: Place; from: number; to: number; turns: number }) {
  const steps = turns * 24
  const places = Array.from({ length: steps + 1 }, (_, i) =>
    around(at, from + ((to - from) * i) / steps, i / 24),
  )
  return <Lines d={through(places, false)} />
}

/** A rod with a round bob and its rating nut. */
export function Pendulum({ x = mid, top, bob, r }: { x?: number; top: number; bob: number; r: number }) {
  return (
    <>
      <Lines d={`M${x - 1} ${top}V${bob}M${x + 1} ${top}V${bob}`} />
      <Lines d={`M${x} ${bob + r}V${bob + r + 7}M${x - 3} ${bob + r + 3}H${x + 3}`} />
      <Round at={[x, bob]} r={r} main />
      <Round at={[x, bob]} r={r * 0.78} />
    </>
  )
}

/** A cylindrical weight on its hook. */
export const Weight = ({
  x,
  top,
  half = 7,
  length,
}: {
  x: number
  top: number
  half?: number
  length: number
}) => (
  <>
    <Lines d={`M${x} ${top - 8}a3 3 0 1 1 -2 5`} />
    <Contour d={`M${x - half} ${top + 2}q${half} -5 ${2 * half} 0v${length}q${-half} 5 ${-2 * half} 0Z`} />
    <Lines
      d={`M${x - half} ${top + 6}q${half} 4 ${2 * half} 0M${x + half * 0.4} ${top + 12}v${length - 16}`}
    />
  </>
)

/** A turned ball on a neck with a point, as stands on a case. */
export const Finial = ({ at: [x, y], r = 5 }: { at: Place; r?: number }) => (
  <>
    <Contour
      d={`M${x - r * 0.8} ${y}q${r * 0.4} ${-r * 0.2} ${r * 0.5} ${-r * 0.7}h${r * 0.6}q${r * 0.1} ${r * 0.5} ${r * 0.5} ${r * 0.7}Z`}
    />
    <Contour d={`M${x} ${y - r * 3.6}l${r * 0.35} ${r * 1.1}h${-r * 0.7}Z`} />
    <Round at={[x, y - r * 1.6]} r={r} main />
    <Lines d={`M${x - r} ${y - r * 1.6}q${r} ${r * 0.6} ${2 * r} 0`} />
  </>
)
