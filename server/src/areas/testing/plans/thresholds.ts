import { type Block, factOf, type Value } from '../../../job/model.ts'

/** Something that happens at a temperature, K, in words, with where it is stated. */
export interface Threshold {
  readonly what: 'warning' | 'trip' | 'switches-at'
  readonly words: string
  readonly value: Value<number>
}

/** What a sensor states to happen at a temperature. */
export function thresholdsOf(sensor: Block): readonly Threshold[] {
  const stated = [
    { what: 'warning', words: 'warning', value: factOf(sensor, 'sensor.warning') },
    { what: 'trip', words: 'trip', value: factOf(sensor, 'sensor.trip') },
    { what: 'switches-at', words: 'switching point', value: factOf(sensor, 'sensor.switches-at') },
  ] as const
  return stated.flatMap(({ what, words, value }) => (value ? [{ what, words, value }] : []))
}
