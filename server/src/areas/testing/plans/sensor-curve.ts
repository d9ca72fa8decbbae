import type { SensorCurve } from '../../../engineering/temperature/sensor-curve.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { blockPlan } from '../../../store/plan.ts'
import { celsius } from '../../common/celsius.ts'

const laws: Readonly<Record<string, SensorCurve>> = {
  pt100: { kind: 'platinum', r0: 100 },
  pt1000: { kind: 'platinum', r0: 1000 },
  'kty84-130': { kind: 'kty84-130' },
}

/** What the kind of a sensor says of its resistance, without its own points; undefined for a trip thermistor, and where facts are missing. */
export const lawOf = blockPlan((sensor: Block): SensorCurve | undefined => {
  const kind = factOf(sensor, 'sensor.kind')?.value
  if (kind !== 'ntc') return kind && laws[kind]
  const r25 = factOf(sensor, 'sensor.r25')?.value
  const beta = factOf(sensor, 'sensor.beta')?.value
  return r25 === undefined || beta === undefined ? undefined : { kind: 'ntc', r25, beta }
})

/** The points that a sensor states, °C and Ω. */
export const pointsOf = blockPlan((sensor: Block): SensorCurve | undefined => {
  const points = factOf(sensor, 'sensor.curve')?.value.map(({ at, value }) => ({
    celsius: celsius(at),
    ohms: value,
  }))
  return points && { kind: 'points', points }
})

/** What gives the resistance of a sensor: its points, else its kind. */
export const curveOf = (sensor: Block): SensorCurve | undefined =>
  sensor.unread.has('curve') ? undefined : (pointsOf(sensor) ?? lawOf(sensor))
