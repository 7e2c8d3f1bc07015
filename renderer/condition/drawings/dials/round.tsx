import { ArabicFigures, Hands, MinuteRing, RomanFigures } from '../face.tsx'
import { box, Contour, Lines, mid, type Place, Round, spokes, WindingSquare } from '../kit.tsx'

const at: Place = [mid, 160]

const Bezel = () => (
  <>
    <Contour d={box(8, 146, 20, 174)} />
    <Lines d="M8 153H20M8 160H20M8 167H20" />
    <Contour d="M218 152h12v16h-12Z" />
    <Round at={at} r={106} main />
    <Round at={at} r={98} main />
  </>
)

/** A round dial with Roman figures, two squares to wind. */
export const RoundDial = () => (
  <>
    <Bezel />
    <MinuteRing at={at} r={93} broad={6} />
    <RomanFigures at={at} r={72} size={20} />
    <Round at={at} r={57} />
    <WindingSquare at={[mid - 28, 186]} r={6} />
    <WindingSquare at={[mid + 28, 186]} r={6} />
    <Lines d="M112 128h16M112 125v6M128 125v6" />
    <Hands at={at} r={92} />
  </>
)

/** A round dial with upright figures, a small dial for seconds or the alarm. */
export const FigureDial = () => (
  <>
    <Bezel />
    <MinuteRing at={at} r={93} broad={6} />
    <ArabicFigures at={at} r={72} size={21} />
    <Round at={[mid, 200]} r={21} />
    <Lines d={`${spokes([mid, 200], 16, 20, 12)}M${mid} 204l6 -17`} />
    <Round at={[mid, 200]} r={2} />
    <WindingSquare at={[mid - 34, 172]} r={6} />
    <WindingSquare at={[mid + 34, 172]} r={6} />
    <Hands at={at} r={92} />
  </>
)

/** A small enamelled dial in a pierced ring, nothing to wind from before. */
export const TorsionDial = () => (
  <>
    <Round at={at} r={104} main />
    <Round at={at} r={90} main />
    <Lines d={spokes(at, 90, 104, 24)} />
    <Round at={at} r={97} />
    <MinuteRing at={at} r={84} broad={5} />
    <ArabicFigures at={at} r={66} size={19} />
    <Round at={at} r={50} />
    <Lines d={spokes(at, 16, 24, 8)} />
    <Hands at={at} r={82} />
  </>
)
