import { elide } from '../../quantity/elide.ts'
import type { AheadTurns } from '../common/ahead-turns.ts'

const orders = {
  same: 'in the order of the terminals',
  shifted: 'shifted in a circle, which turns it the same way',
  exchanged: 'two exchanged',
} as const

/** How the direction of the shaft comes about: `Motor: clockwise facing its drive end (phases two exchanged). Gear: opposite.` */
export function rotationWords({ motor, order, isReversed, gear }: AheadTurns): string {
  const setting = isReversed ? '; controller reversed' : ''
  const through = gear ? `Gear: ${gear === 'same' ? 'same way' : 'opposite way'}.` : 'No gear.'
  return `Motor: ${motor}, facing its drive end (phases ${orders[order]}${setting}). ${through}`
}

/** `A to V and B to U`, instead of `A to U and B to V`. */
export function exchanged(pairs: AheadTurns['exchange']): string {
  const [[from, to], [otherFrom, otherTo]] = pairs.map((pair) => pair.map(elide)) as unknown as typeof pairs
  return `${from} to ${otherTo} and ${otherFrom} to ${to}`
}
