import {
  around,
  box,
  Coil,
  Contour,
  Hidden,
  Lines,
  Mirrored,
  mid,
  type Place,
  Round,
  Screw,
  spokes,
  Wheel,
  WindingSquare,
} from '../kit.tsx'

/** A balance with its spring on a small plate. */
const Balance = ({ at, r }: { at: Place; r: number }) => (
  <>
    <Round at={at} r={r} main />
    <Round at={at} r={r * 0.86} />
    <Lines d={`${spokes(at, 3, r * 0.86, 2)}`} />
    <Coil at={at} from={r * 0.55} to={3} turns={4} />
    <Round at={at} r={2.5} />
  </>
)

/** Plates with the platform across their top, from behind; the platform is shown turned up so that its balance is seen. */
export const PlatformMovement = () => (
  <>
    <Contour d={box(62, 16, 178, 104)} />
    <Mirrored>
      <Screw at={[70, 24]} r={4} />
      <Screw at={[70, 96]} r={4} />
    </Mirrored>
    <Balance at={[100, 60]} r={28} />
    <Wheel at={[152, 60]} r={14} teeth={15} />
    <Contour d="M120 54l16 2v8l-16 2Z" />
    <Contour d={box(54, 104, 186, 116)} />
    <Contour d={box(60, 116, 180, 304)} />
    <Mirrored>
      <Screw at={[69, 125]} r={4.5} />
      <Screw at={[69, 295]} r={4.5} />
    </Mirrored>
    <Hidden d="M66 254a26 26 0 1 0 52 0a26 26 0 1 0 -52 0M122 254a26 26 0 1 0 52 0a26 26 0 1 0 -52 0" />
    <WindingSquare at={[92, 254]} r={8} />
    <WindingSquare at={[148, 254]} r={8} />
    <Coil at={[mid, 190]} from={48} to={30} turns={3} />
    <Wheel at={[mid, 190]} r={20} teeth={36} />
    <WindingSquare at={[mid, 190]} r={6} />
    <Round at={[mid, 136]} r={2.5} />
    <Round at={[146, 146]} r={2.5} />
    <Lines d="M74 150q-6 40 2 78" />
    <Round at={[76, 230]} r={5} main />
  </>
)

const centre: Place = [mid, 160]

/** A round movement with its own lever platform and the hammer for the bells. */
export const RoundMovement = () => (
  <>
    <Round at={centre} r={104} main />
    <Round at={centre} r={100} />
    {[0, 1, 2, 3].map(i => (
      <Screw key={i} at={around(centre, 90, i / 4 + 1 / 8)} r={5} />
    ))}
    <Hidden d="M34 196a36 36 0 1 0 72 0a36 36 0 1 0 -72 0M134 196a36 36 0 1 0 72 0a36 36 0 1 0 -72 0" />
    <Wheel at={[70, 196]} r={16} teeth={22} arms={0} />
    <WindingSquare at={[70, 196]} r={7} />
    <Wheel at={[170, 196]} r={16} teeth={22} arms={0} />
    <WindingSquare at={[170, 196]} r={7} />
    <Wheel at={[mid, 160]} r={18} teeth={34} />
    <Wheel at={[mid, 206]} r={14} teeth={26} />
    <Contour d="M64 72Q120 44 176 72L164 128H76Z" />
    <Screw at={[80, 82]} r={4} />
    <Screw at={[160, 82]} r={4} />
    <Balance at={[mid, 92]} r={27} />
    <Lines d="M186 132Q206 150 204 178" />
    <Round at={[203, 182]} r={6} main />
  </>
)

/** A small movement on its platform, the wire in its guard, and the balls that turn. */
export const TorsionMovement = () => (
  <>
    <Contour d={box(66, 34, 174, 150)} />
    <Mirrored>
      <Screw at={[75, 43]} r={4.5} />
      <Screw at={[75, 141]} r={4.5} />
    </Mirrored>
    <Hidden d="M74 112a32 32 0 1 0 64 0a32 32 0 1 0 -64 0" />
    <Wheel at={[106, 112]} r={17} teeth={24} arms={0} />
    <WindingSquare at={[106, 112]} r={7} />
    <Contour d="M126 90l8 3l-3 8l-7 -3Z" />
    <Wheel at={[150, 84]} r={18} teeth={30} />
    <Wheel at={[mid, 62]} r={14} teeth={24} />
    <Contour d={`M${mid - 16} 52Q${mid} 36 ${mid + 16} 52L${mid + 12} 56Q${mid} 44 ${mid - 12} 56Z`} />
    <Lines d={`M${mid} 46V18M${mid - 9} 30H${mid + 9}M${mid - 9} 30V20M${mid + 9} 30V20`} />
    <Contour d={box(54, 150, 186, 160)} />
    <Contour d={box(mid - 12, 4, mid + 12, 14)} />
    <Lines d={`M${mid} 14V252`} />
    <Contour d={box(mid - 6, 160, mid + 6, 214)} />
    <Lines d={`M${mid} 160V214`} />
    <Mirrored>
      <Lines d="M120 262H76M120 266L92 288" />
      <Round at={[66, 263]} r={17} main />
      <Lines d="M56 258q2 -8 9 -8" />
      <Round at={[92, 290]} r={18} main />
      <Lines d="M81 285q2 -9 10 -9" />
    </Mirrored>
    <Contour d={box(mid - 5, 246, mid + 5, 294)} />
    <Round at={[mid, 250]} r={8} main />
    <Lines d={spokes([mid, 250], 3, 8, 12)} />
  </>
)
