import { SmallFace } from '../face.tsx'
import {
  arched,
  box,
  Coil,
  Contour,
  Finial,
  Lines,
  Mirrored,
  mid,
  Pendulum,
  Round,
  Screw,
  slab,
} from '../kit.tsx'

const Case = () => (
  <>
    <Mirrored>
      <Contour d="M58 296h18q2 6 -3 10h-15q-3 -4 0 -10Z" />
      <Finial at={[66, 110]} r={5} />
    </Mirrored>
    <Contour
      d={`M${mid - 20} 66Q${mid - 20} 44 ${mid} 44T${mid + 20} 66H${mid + 14}Q${mid + 14} 51 ${mid} 51T${mid - 14} 66Z`}
    />
    <Round at={[mid, 47.5]} r={5} />
    <Contour d="M82 110Q80 92 96 84Q104 80 104 70H136Q136 80 144 84Q160 92 158 110Z" />
    <Lines d="M92 104Q92 94 102 90Q111 86 112 76M148 104Q148 94 138 90Q129 86 128 76" />
    <Contour d={slab(32, 66, 71)} />
    <Contour d={slab(66, 110, 119)} />
    <Lines d={`M${mid - 64} 114.5H${mid + 64}`} />
    <Contour d={slab(60, 119, 284)} />
    <Contour d={slab(66, 284, 297)} />
    <Lines d={`M${mid - 63} 290H${mid + 63}`} />
  </>
)

/** Caddy top with its handle, and the arched dial behind the door. */
export const BracketFront = () => (
  <>
    <Case />
    <Contour d={arched(52, 40, 166, 276)} />
    <Contour d={arched(45, 33, 170, 268)} />
    <Mirrored>
      <Lines d="M78 178q8 0 9 8q-8 1 -9 -8M78 262q8 0 9 -8q-8 -1 -9 8" />
    </Mirrored>
    <Round at={[mid, 158]} r={13} />
    <Lines d={`M${mid} 158l6 -7`} />
    <SmallFace at={[mid, 220]} r={42} />
    <Lines d="M70 224v6M170 186h4v10h-4M170 244h4v10h-4" />
  </>
)

/** The back door with its glass: back plate, bell and short pendulum. */
export const BracketBack = () => (
  <>
    <Case />
    <Contour d={arched(52, 40, 166, 276)} />
    <Contour d={arched(44, 32, 170, 268)} />
    <Contour d={`M${mid - 16} 158A16 14 0 0 1 ${mid + 16} 158Z`} />
    <Lines d={`M${mid} 158v8`} />
    <Contour d={slab(30, 168, 248)} />
    <Lines d={`${slab(27, 171, 245)}`} />
    <Mirrored>
      <Screw at={[95, 175]} r={3} />
      <Screw at={[95, 241]} r={3} />
      <Coil at={[105, 192]} from={9} to={1} turns={2} />
      <Coil at={[106, 222]} from={10} to={1} turns={2} />
    </Mirrored>
    <Contour d={slab(9, 164, 178)} />
    <Pendulum top={176} bob={236} r={12} />
    <Lines d="M170 222v6M66 186h4v10h-4M66 244h4v10h-4" />
    <Lines d={box(168, 219, 173, 231)} />
  </>
)
