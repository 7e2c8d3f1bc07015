import type { ReactNode } from 'react'
import { Aperture, Hands, MinuteRing, RomanFigures } from '../face.tsx'
import {
  arched,
  Coil,
  Contour,
  Lines,
  Mirrored,
  mid,
  type Place,
  Round,
  spokes,
  WindingSquare,
} from '../kit.tsx'

const at: Place = [mid, 204]

/** A square dial with an arch above it, spandrels in its corners. */
const ArchedDial = ({ children }: { children: ReactNode }) => (
  <>
    <Contour d={arched(100, 72, 104, 304)} />
    <Mirrored>
      <Coil at={[34, 118]} from={9} to={2} turns={2} />
      <Lines d="M24 108q22 0 22 22q-16 2 -22 -22M30 142q2 -14 12 -16M62 112q-14 2 -16 12" />
      <Coil at={[34, 290]} from={9} to={2} turns={2} />
      <Lines d="M24 300q22 0 22 -22q-16 -2 -22 22M30 266q2 14 12 16M62 296q-14 -2 -16 -12" />
    </Mirrored>
    <MinuteRing at={at} r={92} broad={6} />
    <RomanFigures at={at} r={73} size={19} />
    <Round at={at} r={59} />
    <Lines d={spokes(at, 56, 59, 48)} />
    {children}
    <Hands at={at} r={88} />
  </>
)

/** With the moon in the arch, seconds, and the day of the month. */
export const MoonDial = () => (
  <ArchedDial>
    <Lines d={`M56 102A64 64 0 0 1 184 102`} />
    <Lines d={`M56 102A26 26 0 0 1 106 102M134 102A26 26 0 0 1 184 102`} />
    <Round at={[mid, 70]} r={21} main />
    <Lines d={`M${mid - 7} 66h.1M${mid + 7} 66h.1M${mid} 69q3 6 -1 7M${mid - 8} 81q8 5 16 0`} />
    <Lines d="M82 62l2 5l5 0l-4 3l1 5l-4 -3l-4 3l1 -5l-4 -3l5 0ZM160 60l2 5l5 0l-4 3l1 5l-4 -3l-4 3l1 -5l-4 -3l5 0Z" />
    <Round at={[mid, 172]} r={19} />
    <Lines d={`${spokes([mid, 172], 14, 18, 12)}M${mid} 176V158`} />
    <Aperture y={240} half={8} />
    <WindingSquare at={[mid - 28, 214]} r={6} />
    <WindingSquare at={[mid + 28, 214]} r={6} />
  </ArchedDial>
)

/** With a subsidiary dial in the arch that silences the strike, and a slot that shows the pendulum. */
export const SilentDial = () => (
  <ArchedDial>
    <Round at={[mid, 78]} r={30} main />
    <Round at={[mid, 78]} r={22} />
    <Lines
      d={`${spokes([mid, 78], 23, 29, 8)}M${mid} 82L${mid - 11} 60M${mid - 11} 60l0 6M${mid - 11} 60l5 4`}
    />
    <Round at={[mid, 78]} r={3} />
    <Mirrored>
      <Lines d="M62 98q2 -26 22 -40q6 14 -8 24q-2 10 -14 16" />
    </Mirrored>
    <Contour d={`M${mid - 22} 176Q${mid} 158 ${mid + 22} 176L${mid + 18} 182Q${mid} 168 ${mid - 18} 182Z`} />
    <Round at={[mid, 171]} r={5} />
    <Aperture y={246} half={7} />
    <WindingSquare at={[mid - 32, 208]} r={6} />
    <WindingSquare at={[mid, 232]} r={6} />
    <WindingSquare at={[mid + 32, 208]} r={6} />
  </ArchedDial>
)
