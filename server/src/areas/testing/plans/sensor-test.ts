import { platinumTolerance } from '../../../engineering/temperature/platinum.ts'
import {
  type SensorCurve,
  type SensorReading,
  sensorReading,
} from '../../../engineering/temperature/sensor-curve.ts'
import { tripPtcLimit } from '../../../engineering/temperature/trip-ptc.ts'
import { type Block, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { celsius } from '../../common/celsius.ts'
import { curveOf } from './sensor-curve.ts'
import { partOf } from './test-log.ts'

/** What a sensor and the thermometer beside it may differ by, K, besides the tolerance of the sensor. Common practice, no source. */
const tolerated = 5
/** Below this a circuit is shorted, Ω, and from this on it is open. Common practice, no source. */
const shorted = 5
const open = 1e6

const others: readonly (readonly [name: string, curve: SensorCurve])[] = [
  ['pt100', { kind: 'platinum', r0: 100 }],
  ['pt1000', { kind: 'platinum', r0: 1000 }],
  ['kty84-130', { kind: 'kty84-130' }],
]

export interface SensorTest {
  readonly ohms: number
  /** Undefined for a trip thermistor. */
  readonly read: SensorReading | undefined
  /** Of the thermometer beside it, °C. */
  readonly stated: number | undefined
  /** Whether they agree; undefined where that cannot be told. */
  readonly agrees: boolean | undefined
  /** What they may differ by, K. */
  readonly within: number
  /** What explains a reading that does not fit, as a sentence. */
  readonly because: string | undefined
}

/** What a test of a sensor shows. Undefined where it is no such test, or the curve of the sensor is not known. */
export const sensorTestOf = plan((test: Block, lookup: Lookup): SensorTest | undefined => {
  const sensor = partOf(lookup)
  const ohms = factOf(test, 'test.resistance')?.value
  if (factOf(test, 'test.kind')?.value !== 'sensor' || sensor?.kind !== 'sensor' || ohms === undefined)
    return undefined
  const at = factOf(test, 'test.temperature')?.value
  const stated = at === undefined ? undefined : celsius(at)
  const kind = factOf(sensor, 'sensor.kind')?.value
  if (kind === 'ptc') return tripTest(sensor, ohms, stated)
  const curve = curveOf(sensor)
  const read = curve && sensorReading(curve, ohms)
  if (!curve || !read) return undefined
  const toleranceClass = factOf(sensor, 'sensor.tolerance-class')?.value ?? 'B'
  const own =
    curve.kind === 'platinum' && read.is === 'temperature'
      ? platinumTolerance(toleranceClass, read.celsius)
      : 0
  const within = tolerated + own
  const fits = (of: SensorCurve, resistance: number, temperature: number) => {
    const found = sensorReading(of, resistance)
    return found?.is === 'temperature' && Math.abs(found.celsius - temperature) <= within
  }
  // Beyond its range it reads no temperature that a winding has, whatever the thermometer showed.
  const agrees =
    read.is === 'temperature' ? (stated === undefined ? undefined : fits(curve, ohms, stated)) : false
  return {
    ohms,
    read,
    stated,
    agrees,
    within,
    because: agrees === false ? explained({ kind, curve, ohms, stated, fits }) : undefined,
  }
})

function explained(given: {
  readonly kind: string | undefined
  readonly curve: SensorCurve
  readonly ohms: number
  readonly stated: number | undefined
  readonly fits: (of: SensorCurve, ohms: number, celsius: number) => boolean
}): string | undefined {
  const { kind, curve, ohms, stated, fits } = given
  if (ohms < shorted) return 'Its circuit is shorted.'
  if (stated !== undefined) {
    const other = others.find(([name, of]) => name !== kind && fits(of, ohms, stated))
    if (other) return `The resistance is that of a ${other[0]}.`
    if (fits(curve, ohms * 1000, stated) || fits(curve, ohms / 1000, stated))
      return 'Ohm and kiloohm may be exchanged.'
    if (fits(curve, ohms, (stated - 32) / 1.8)) return 'The temperature may be in degF.'
  }
  if (ohms >= open) return 'Its circuit is open.'
  return kind === 'kty84-130' ? 'A KTY reads wrong with its leads exchanged.' : undefined
}

/** One to three in series are usual: one for each phase. */
function tripTest(sensor: Block, ohms: number, stated: number | undefined): SensorTest | undefined {
  const switches = factOf(sensor, 'sensor.switches-at')?.value
  const base = { ohms, read: undefined, stated, within: 5 }
  if (ohms < shorted) return { ...base, agrees: false, because: 'Its circuit is shorted.' }
  if (switches === undefined || stated === undefined || stated > 250)
    return { ...base, agrees: undefined, because: undefined }
  const limit = (count: number) => tripPtcLimit({ celsius: stated, switchesAt: celsius(switches), count })
  const [low, high] = [limit(1).low ?? 0, limit(3).high ?? Number.POSITIVE_INFINITY]
  const agrees = ohms >= low && ohms <= high
  const because =
    ohms > high
      ? ohms >= open
        ? 'Its circuit is open.'
        : 'It has switched, or it is no trip thermistor.'
      : 'It has not switched.'
  return { ...base, agrees, because: agrees ? undefined : because }
}
