import { ArabicFigures, Hands } from '../face.tsx'
import { around, box, Contour, Lines, mid, type Place, Round, Screw, spokes } from '../kit.tsx'

const at: Place = [mid, 160]

const Flange = () => (
  <>
    <Round at={at} r={106} main />
    <Round at={at} r={102} />
    {[0, 1, 2, 3, 4, 5].map(i => (
      <Screw key={i} at={around(at, 94, i / 6 + 1 / 12)} r={4} />
    ))}
  </>
)

/** A round brass case to be screwed to a bulkhead. */
export const ShipFront = () => (
  <>
    <Flange />
    <Contour d={box(22, 148, 36, 172)} />
    <Lines d="M22 154H34M22 160H34M22 166H34" />
    <Round at={at} r={86} main />
    <Round at={at} r={79} />
    <Contour d="M202 152h14q4 8 0 16h-14Z" />
    <Round at={[211, 160]} r={3.5} />
    <Round at={at} r={72} main />
    <Lines d={spokes(at, 66, 70, 60)} />
    <ArabicFigures at={at} r={56} size={13} />
    <Round at={[mid, 194]} r={13} />
    <Lines d={`${spokes([mid, 194], 9, 12, 12)}M${mid} 194l4 -8`} />
    <Round at={[mid, 124]} r={3} />
    <Round at={[mid - 22, 176]} r={3.5} />
    <Round at={[mid + 22, 176]} r={3.5} />
    <Hands at={at} r={64} />
  </>
)

/** The back of the drum, its rim with the holes for the bulkhead screws. */
export const ShipBack = () => (
  <>
    <Flange />
    <Round at={at} r={82} main />
    <Round at={at} r={77} />
    {[0, 1, 2].map(i => (
      <Screw key={i} at={around(at, 62, i / 3)} r={6} />
    ))}
    <Contour d="M96 142h48v30h-48Z" />
    <Lines d="M102 150h36M102 157h36M102 164h22" />
    <Lines d={`M${mid - 40} 206Q${mid} 230 ${mid + 40} 206`} />
    <Contour d={box(204, 148, 218, 172)} />
    <Lines d="M206 154H218M206 160H218M206 166H218" />
  </>
)
