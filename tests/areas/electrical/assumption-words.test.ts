import { expect, it } from 'vitest'
import { formatAssumption } from '../../../server/src/areas/electrical/plans/assumption-words.ts'

// Words for what the kernels take for granted: held as they are shown, since people look for them.
it.each([
  [{ type: 'ambient', ambientC: 50 }, 'ambient is 50 °C'],
  [
    { type: 'cooler-not-counted', ambientC: 50 },
    'ambient counts as 50 °C, that of the place: less is stated',
  ],
  [{ type: 'lower-column', insulationC: 104, columnC: 90 }, '104 °C insulation is read in the 90 °C column'],
  [{ type: 'between-rows' }, 'the size lies between two rows of the table: interpolated by section'],
  [
    { type: 'above-rows' },
    'the size is larger than every row of the table: the largest row is used, and the maker may allow more',
  ],
  [
    { type: 'below-rows' },
    'the size is smaller than every row of the table: the cable can carry less than the smallest row',
  ],
  [
    { type: 'table-alone', table: 'T' },
    'T is from memory; no other table reaches this size to hold it against',
  ],
  [{ type: 'table-not-lower', table: 'T' }, 'T is from memory and not lower: not used'],
  [{ type: 'table-lower', table: 'T', than: 'U' }, 'T is from memory; lower than U'],
  [{ type: 'bundling-us' }, 'bundling factors are the US set, the stricter of the two in use'],
  [
    { type: 'pair-not-derated' },
    'two conductors together are not derated; recent ABYC E-11 derates DC pairs',
  ],
  [{ type: 'strands-class-5' }, 'strands are IEC 60228 class 5'],
  [{ type: 'copper-tinned' }, 'copper is tinned'],
  [{ type: 'stranding-2-percent' }, 'strands add 2 % to the resistance of solid wire'],
  [
    { type: 'no-row', mm2: 38.5 },
    'no IEC 60228 row for 38.5 mm²: resistance scaled by section from the worst row',
  ],
  [{ type: 'insulation-limit', insulationC: 105 }, 'conductor is as warm as its insulation allows, 105 °C'],
  [
    { type: 'highest-motor-voltage' },
    'motor runs at the highest voltage its inverter makes; at less the current is greater',
  ],
  [{ type: 'space-vectors' }, 'inverter modulates by space vectors'],
] as const)('%o is said', (assumption, words) => {
  expect(formatAssumption(assumption)).toBe(words)
})
