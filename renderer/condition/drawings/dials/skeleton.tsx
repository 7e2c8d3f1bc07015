import { Hands } from '../face.tsx'
import { around, Lines, mid, type Place, Round, spokes, Wheel, WindingSquare } from '../kit.tsx'

const at: Place = [mid, 160]

const figures = ['XII', 'I', 'II', 'III', 'IIII', 'V', 'VI', 'VII', 'VIII', 'IX', 'X', 'XI'] as const

/** A shield that carries one figure, joined to the next by a bridge. */
const Shield = ({ hour, figure }: { hour: number; figure: string }) => (
  <g transform={`rotate(${hour * 30} ${at[0]} ${at[1]})`}>
    <path className="paper" strokeWidth={1.75} d="M104 62Q120 54 136 62Q137 82 120 94Q103 82 104 62Z" />
    <text className="numeral" x={mid} y={72} fontSize={15} textAnchor="middle" dominantBaseline="central">
      {figure}
    </text>
  </g>
)

/** A chapter ring cut through: shields for the hours, and the motion work to be seen behind. */
export const SkeletonDial = () => (
  <>
    <Round at={at} r={106} main />
    <Lines d={spokes(at, 99, 105, 60)} />
    <Round at={at} r={99} />
    {figures.map((figure, hour) => (
      <Shield key={figure} hour={hour} figure={figure} />
    ))}
    <Round at={at} r={66} main />
    <Round at={at} r={61} />
    <Lines d={spokes(at, 32, 61, 4)} />
    <Wheel at={at} r={32} teeth={44} arms={5} />
    <Wheel at={around(at, 44, 0.36)} r={16} teeth={24} />
    <WindingSquare at={[mid, 206]} r={6} />
    <Hands at={at} r={98} />
  </>
)
