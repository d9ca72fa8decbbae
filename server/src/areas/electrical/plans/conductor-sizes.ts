import { reaches } from '../../../engineering/compare.ts'
import { awgArea } from '../../../engineering/electrical/awg.ts'
import { iec60228 } from '../../../engineering/electrical/iec-60228.ts'
import { sectionOf } from './cable-ampacity.ts'

/** A conductor that is made: its section in m², as it is written and as it is said. */
export interface ConductorSize {
  readonly area: number
  readonly written: string
  readonly shown: string
}

const gauge = (n: number): ConductorSize => {
  const name = `${n > 0 ? n : `${1 - n}/0`} AWG`
  return { area: awgArea(n), written: name, shown: name }
}

/** Conductors that are made, the smallest first. Metric: the sections of IEC 60228, as the table of resistances has them. Gauges: even ones from
 * 18 to 2, 1, then 1/0 to 4/0: the rows of 33 CFR 183.425 table 5. */
export const conductorSizes: Readonly<Record<'metric' | 'awg', readonly ConductorSize[]>> = {
  metric: iec60228.rows.map(({ mm2 }) => ({ area: mm2 * 1e-6, written: `${mm2} mm2`, shown: `${mm2} mm²` })),
  awg: [18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3].map(gauge),
}

/** The smallest conductor that is made with at least so much section (m²), metric or by gauge as another one (m²); undefined above the largest. */
export const madeFor = (area: number, as: number): ConductorSize | undefined =>
  conductorSizes[sectionOf(as).system].find((size) => reaches(size.area, area))
