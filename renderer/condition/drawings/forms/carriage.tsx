import { SmallFace } from '../face.tsx'
import {
  box,
  Coil,
  Contour,
  Lines,
  Mirrored,
  mid,
  Round,
  Screw,
  slab,
  spokes,
  WindingSquare,
} from '../kit.tsx'

const Case = () => (
  <>
    <Mirrored>
      <Lines d="M80 98Q78 60 92 52H120M87 98Q86 66 95 59H120" />
      <Round at={[83, 96]} r={4.5} />
    </Mirrored>
    <Round at={[mid, 55.5]} r={7} />
    <Contour d={slab(52, 100, 108)} />
    <Contour d={slab(47, 108, 118)} />
    <Contour d={slab(44, 118, 268)} />
    <Mirrored>
      <Contour d={box(72, 124, 81, 262)} />
      <Contour d={box(70, 118, 83, 124)} />
      <Contour d={box(70, 262, 83, 268)} />
      <Lines d="M76.5 128V258" />
    </Mirrored>
    <Contour d={slab(47, 268, 278)} />
    <Contour d={slab(54, 278, 288)} />
    <Lines d={`M${mid - 51} 283H${mid + 51}`} />
  </>
)

/** A small glazed case with a handle; an alarm dial below the dial. */
export const CarriageFront = () => (
  <>
    <Case />
    <Lines d={slab(36, 124, 262)} />
    <SmallFace at={[mid, 172]} r={32} />
    <Round at={[mid, 232]} r={14} main />
    <Lines d={spokes([mid, 232], 9, 12, 12)} />
    <Lines d={`M${mid} 232l5 -6`} />
  </>
)

/** Its back door: winding squares, setting square, gong, and the platform at the top. */
export const CarriageBack = () => (
  <>
    <Case />
    <Contour d={slab(36, 124, 262)} />
    <Contour d={slab(30, 146, 258)} />
    <Coil at={[mid, 200]} from={26} to={14} turns={2} />
    <WindingSquare at={[mid - 15, 234]} r={6} />
    <WindingSquare at={[mid + 15, 234]} r={6} />
    <WindingSquare at={[mid, 200]} r={5} />
    <WindingSquare at={[mid, 168]} r={4} />
    <Mirrored>
      <Screw at={[95, 151]} r={2.6} />
      <Screw at={[95, 253]} r={2.6} />
    </Mirrored>
    <Contour d={slab(32, 138, 146)} />
    <Round at={[mid, 132]} r={4} />
    <Lines d={`M${mid - 15} 130H${mid + 15}M${mid - 15} 128v4M${mid + 15} 128v4`} />
    <Round at={[mid + 33, 190]} r={3.5} />
  </>
)
