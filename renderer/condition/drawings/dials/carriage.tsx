import { Hands, MinuteRing, RomanFigures } from '../face.tsx'
import { box, Coil, Contour, Lines, Mirrored, mid, type Place, Round, Screw, spokes } from '../kit.tsx'

const at: Place = [mid, 126]
const alarm: Place = [mid, 250]

/** An upright dial in its mask, the alarm set below. */
export const CarriageDial = () => (
  <>
    <Contour d={box(30, 14, 210, 306)} />
    <Lines d={box(36, 20, 204, 300)} />
    <Mirrored>
      <Screw at={[43, 27]} r={3.5} />
      <Screw at={[43, 293]} r={3.5} />
      <Coil at={[54, 214]} from={10} to={2} turns={2} />
      <Coil at={[56, 272]} from={10} to={2} turns={2} />
      <Lines d="M48 204q20 4 26 20M48 284q22 -4 28 -16M54 226v34" />
    </Mirrored>
    <Round at={at} r={80} main />
    <MinuteRing at={at} r={76} broad={5} />
    <RomanFigures at={at} r={60} size={16} />
    <Round at={at} r={47} />
    <Hands at={at} r={74} />
    <Round at={alarm} r={36} main />
    <Round at={alarm} r={32} />
    <Lines d={spokes(alarm, 20, 30, 12)} />
    <Lines d={`M${mid} 256V234M${mid - 4} 240L${mid} 232L${mid + 4} 240`} />
    <Round at={alarm} r={3} />
  </>
)
