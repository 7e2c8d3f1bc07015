import { OneHand, RomanFigures } from '../face.tsx'
import { around, box, Contour, Lines, Mirrored, mid, type Place, Round, spokes } from '../kit.tsx'

const at: Place = [mid, 160]

/** A petal of the engraved middle. */
function petal(turn: number): string {
  const p = (r: number, aside: number) => around(at, r, turn + aside).join(' ')
  return `M${p(25, 0)}Q${p(38, -0.06)} ${p(48, 0)}Q${p(38, 0.06)} ${p(25, 0)}`
}

/** The mark of a half hour. */
function halfHour(hour: number): string {
  const p = (r: number, aside: number) => around(at, r, (hour + 0.5) / 12 + aside).join(' ')
  return `M${p(74, 0)}L${p(86, 0)}M${p(79, -0.01)}L${p(79, 0.01)}`
}

/** A broad ring on an engraved plate, quarters of an hour instead of minutes, one hand, the alarm disc in the middle. */
export const LanternDial = () => (
  <>
    <Contour d={box(30, 44, 210, 276)} />
    <Mirrored>
      <Lines d="M38 56q30 0 34 26q-26 4 -34 -26M38 264q30 0 34 -26q-26 -4 -34 26M44 84q10 2 14 -6M44 236q10 -2 14 6" />
    </Mirrored>
    <Round at={at} r={108} main />
    <Round at={at} r={104} />
    <RomanFigures at={at} r={88} size={20} />
    {Array.from({ length: 12 }, (_, i) => (
      <Lines key={halfHour(i)} d={halfHour(i)} />
    ))}
    <Round at={at} r={70} />
    <Lines d={spokes(at, 60, 66, 48)} />
    <Round at={at} r={66} />
    <Round at={at} r={60} main />
    {Array.from({ length: 12 }, (_, i) => (
      <Lines key={petal(i / 12)} d={petal(i / 12)} />
    ))}
    <Round at={at} r={24} main />
    <Lines d={spokes(at, 15, 22, 12)} />
    <OneHand at={at} r={98} />
  </>
)
