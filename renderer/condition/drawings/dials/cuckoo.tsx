import { Hands, RomanFigures } from '../face.tsx'
import { around, Contour, Lines, mid, type Place, Round, spokes } from '../kit.tsx'

const at: Place = [mid, 160]

/** A leaf that lies along `turn`, with its rib. */
function leaf(turn: number, root: number, length: number): string {
  const p = (r: number, aside: number) => around(at, r, turn + aside).join(' ')
  const [foot, tip] = [p(root, 0), p(root + length, 0)]
  const side = (way: 1 | -1) =>
    `${p(root + length * 0.3, way * 0.05)} ${p(root + length * 0.75, way * 0.034)}`
  const veins = [0.35, 0.55].map(
    part =>
      `M${p(root + length * (part + 0.14), -0.016)}L${p(root + length * part, 0)}L${p(root + length * (part + 0.14), 0.016)}`,
  )
  return `M${foot}C${side(-1)} ${tip}C${p(root + length * 0.75, 0.034)} ${p(root + length * 0.3, 0.05)} ${foot}M${foot}L${p(root + length * 0.85, 0)}${veins.join('')}`
}

/** A turned wooden ring with its figures let in, leaves carved about it, and fretted hands. */
export const CuckooDial = () => (
  <>
    {Array.from({ length: 12 }, (_, i) => (
      <Contour key={around(at, 80, (i + 0.5) / 12).join()} d={leaf((i + 0.5) / 12, 80, 36)} />
    ))}
    <Round at={at} r={86} main />
    <Round at={at} r={80} />
    <RomanFigures at={at} r={66} size={17} />
    <Round at={at} r={52} main />
    <Round at={at} r={46} />
    <Lines d={spokes(at, 46, 52, 60)} />
    <Lines d={spokes(at, 12, 30, 6)} />
    <Hands at={at} r={80} />
  </>
)
