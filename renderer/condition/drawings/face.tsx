import { around, box, Lines, mid, type Place, Round, spokes, through } from './kit.tsx'

const roman = ['XII', 'I', 'II', 'III', 'IIII', 'V', 'VI', 'VII', 'VIII', 'IX', 'X', 'XI'] as const
const arabic = ['12', '1', '2', '3', '4', '5', '6', '7', '8', '9', '10', '11'] as const

interface FaceProps {
  readonly at: Place
  readonly r: number
}

/** Roman figures that stand on the middle, as they are engraved. */
export const RomanFigures = ({ at: [x, y], r, size }: FaceProps & { size: number }) => (
  <>
    {roman.map((figure, hour) => (
      <text
        key={figure}
        className="numeral"
        x={x}
        y={y - r}
        fontSize={size}
        textAnchor="middle"
        dominantBaseline="central"
        transform={`rotate(${hour * 30} ${x} ${y})`}
      >
        {figure}
      </text>
    ))}
  </>
)

/** Arabic figures that stand upright. */
export const ArabicFigures = ({ at, r, size }: FaceProps & { size: number }) => (
  <>
    {arabic.map((figure, hour) => {
      const [x, y] = around(at, r, hour / 12)
      return (
        <text
          key={figure}
          className="numeral"
          x={x}
          y={y}
          fontSize={size}
          textAnchor="middle"
          dominantBaseline="central"
        >
          {figure}
        </text>
      )
    })}
  </>
)

const turnOf = { hour: (10 + 9 / 60) / 12, minute: 9 / 60 } as const

/** A hand with a leaf near its point. */
function hand(at: Place, length: number, turn: number, broad: number): string {
  const along = (part: number, aside: number) =>
    around(at, Math.hypot(length * part, aside), turn + Math.atan2(aside, length * part) / (2 * Math.PI))
  return through([
    along(0.05, -1),
    along(0.55, -1),
    along(0.7, -broad),
    along(1, 0),
    along(0.7, broad),
    along(0.55, 1),
    along(0.05, 1),
  ])
}

/** The two hands at nine past ten, and their collet. */
export const Hands = ({ at, r }: FaceProps) => (
  <>
    <path className="ink" strokeWidth={1.25} d={hand(at, r * 0.58, turnOf.hour, Math.max(2, r * 0.055))} />
    <path className="ink" strokeWidth={1.25} d={hand(at, r * 0.86, turnOf.minute, Math.max(1.5, r * 0.04))} />
    <Round at={at} r={Math.max(2, r * 0.05)} />
  </>
)

/** The one hand of a clock that tells no minutes, with its tail. */
export const OneHand = ({ at, r }: FaceProps) => (
  <>
    <path className="ink" strokeWidth={1.25} d={hand(at, r * 0.8, turnOf.hour, Math.max(2.5, r * 0.08))} />
    <Lines d={through([at, around(at, r * 0.3, turnOf.hour + 0.5)], false)} />
    <Round at={at} r={Math.max(2, r * 0.06)} />
  </>
)

/** The dial of a clock drawn whole: strokes for figures where it is small. */
export const SmallFace = ({ at, r, one = false }: FaceProps & { one?: boolean }) => (
  <>
    <Round at={at} r={r} main />
    {r >= 30 && <Round at={at} r={r * 0.93} />}
    <Lines d={spokes(at, r * 0.7, r * 0.85, 12)} />
    <Round at={at} r={r * 0.62} />
    {one ? <OneHand at={at} r={r} /> : <Hands at={at} r={r * 0.92} />}
  </>
)

/** Sixty strokes between two rings, the fifth ones longer. */
export const MinuteRing = ({ at, r, broad }: FaceProps & { broad: number }) => (
  <>
    <Round at={at} r={r} />
    <Lines d={spokes(at, r - broad, r, 60)} />
    <Round at={at} r={r - broad} />
  </>
)

/** A hole in the dial that shows a figure, such as the day of the month. */
export const Aperture = ({ y, half }: { y: number; half: number }) => (
  <Lines d={box(mid - half, y - half * 0.75, mid + half, y + half * 0.75)} />
)
