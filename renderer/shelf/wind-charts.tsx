import { useMemo } from 'react'
import { shelfLog } from '../../core/run-in/log.ts'
import { pointsText } from '../../core/run-in/rate-chart.ts'
import { rateBars, windsOver } from '../../core/run-in/wind-charts.ts'
import { useShop } from '../shop.tsx'
import { SecondLines, useWidth } from './chart.tsx'
import type { RunView } from './shelf.ts'

const height = 132
const margins = { left: 52, right: 8, top: 8, bottom: 22 }
/** From so much room on the two stand side by side, with so much between them. */
const roomForTwo = 520
const between = 16

/** The winds over one another and the rate of each day: a spring's curve and a wandering clock are seen at once. The same figures stand in the table of readings. */
export function WindCharts({ view }: { view: RunView }) {
  const { chart: said } = useShop().words.shelf
  const { box, width } = useWidth()
  const { run, repair } = view
  const log = useMemo(() => shelfLog(run.log), [run.log])
  const each = width >= roomForTwo ? Math.floor((width - between) / 2) : width
  const room = { width: Math.max(240, each), height, ...margins }
  const winds = windsOver(log, room)
  const bars = rateBars(log, Number(run.limitPerDay), room)
  return (
    <div className="wind-charts" ref={box}>
      {bars && width > 0 && (
        <figure className="chart">
          <svg
            viewBox={`0 0 ${room.width} ${height}`}
            width={room.width}
            height={height}
            role="img"
            aria-label={said.barsLabel(repair.number)}
          >
            <SecondLines lines={bars.seconds} left={margins.left} right={room.width - margins.right} />
            {bars.limits.map(y => (
              <line
                key={y}
                className="limit"
                x1={margins.left}
                x2={room.width - margins.right}
                y1={y}
                y2={y}
              />
            ))}
            {bars.bars.map(({ at, perDay: _, ...bar }) => (
              <rect key={at} className="bar" {...bar} />
            ))}
          </svg>
          <figcaption>{said.bars}</figcaption>
        </figure>
      )}
      {winds && width > 0 && (
        <figure className="chart">
          <svg
            viewBox={`0 0 ${room.width} ${height}`}
            width={room.width}
            height={height}
            role="img"
            aria-label={said.windsLabel(repair.number)}
          >
            <SecondLines lines={winds.seconds} left={margins.left} right={room.width - margins.right} />
            {winds.days.map(({ x, value }) => (
              <text key={value} x={x} y={height - margins.bottom + 16} textAnchor="middle">
                {value}
              </text>
            ))}
            {winds.winds.map(({ at, points }, i) => (
              <polyline
                key={at}
                className="over"
                opacity={0.25 + (0.75 * (i + 1)) / winds.winds.length}
                points={pointsText(points)}
              />
            ))}
          </svg>
          <figcaption>{said.winds}</figcaption>
        </figure>
      )}
    </div>
  )
}
