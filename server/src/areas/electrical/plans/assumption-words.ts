import type { Assumption } from '../../../engineering/electrical/assumption.ts'
import { formatNumber } from '../../../quantity/format.ts'

/** What was taken for granted, to stand in a list. */
export function formatAssumption(assumption: Assumption): string {
  switch (assumption.type) {
    case 'ambient':
      return `ambient is ${assumption.ambientC} °C`
    case 'cooler-not-counted':
      return `ambient counts as ${assumption.ambientC} °C, that of the place: less is stated`
    case 'lower-column':
      return `${assumption.insulationC} °C insulation is read in the ${assumption.columnC} °C column`
    case 'table-alone':
      return `${assumption.table} is from memory; no other table reaches this size to hold it against`
    case 'table-not-lower':
      return `${assumption.table} is from memory and not lower: not used`
    case 'table-lower':
      return `${assumption.table} is from memory; lower than ${assumption.than}`
    case 'table-from-memory':
      return `${assumption.table} is from memory`
    case 'no-row':
      return `no IEC 60228 row for ${formatNumber(assumption.mm2)} mm²: resistance scaled by section from the worst row`
    case 'insulation-limit':
      return `conductor is as warm as its insulation allows, ${assumption.insulationC} °C`
    default:
      return words[assumption.type]
  }
}

const words = {
  'between-rows': 'the size lies between two rows of the table: interpolated by section',
  'above-rows':
    'the size is larger than every row of the table: the largest row is used, and the maker may allow more',
  'below-rows':
    'the size is smaller than every row of the table: the cable can carry less than the smallest row',
  'bundling-us': 'bundling factors are the US set, the stricter of the two in use',
  'pair-not-derated': 'two conductors together are not derated; recent ABYC E-11 derates DC pairs',
  'strands-class-5': 'strands are IEC 60228 class 5',
  'copper-tinned': 'copper is tinned',
  'stranding-2-percent': 'strands add 2 % to the resistance of solid wire',
  'highest-motor-voltage':
    'motor runs at the highest voltage its inverter makes; at less the current is greater',
  'space-vectors': 'inverter modulates by space vectors',
} as const
