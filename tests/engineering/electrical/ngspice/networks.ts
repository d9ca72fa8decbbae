import type { DcNetwork } from '../../../../server/src/engineering/electrical/dc-network.ts'

/** A network, and a place where it is shorted in a second run. */
export interface Compared {
  readonly network: DcNetwork
  readonly fault: readonly [string, string]
}

/** A cable of two poles from one place to another, Ω each. */
const cable = (from: string, to: string, plus: number, minus = plus) => [
  { ends: [`${from}+`, `${to}+`] as const, resistance: plus },
  { ends: [`${from}-`, `${to}-`] as const, resistance: minus },
]
const bank = (place: string, emf: number, resistance: number) => ({
  negative: `${place}-`,
  positive: `${place}+`,
  emf,
  resistance,
})
const load = (place: string, power: number) => ({
  negative: `${place}-`,
  positive: `${place}+`,
  power,
})

/** Invented figures; nothing in them is special. */
export const networks: Readonly<Record<string, Compared>> = {
  'twin drive on two strings with a bus': {
    network: {
      sources: [bank('string a', 105.6, 0.0182), bank('string b', 104.9, 0.0197)],
      links: [
        ...cable('string a', 'bus', 0.00061, 0.00048),
        ...cable('string b', 'bus', 0.00083, 0.00071),
        ...cable('bus', 'port', 0.00124, 0.00119),
        ...cable('bus', 'starboard', 0.00137, 0.00131),
        ...cable('port', 'port controller', 0.00015, 0.0001),
        ...cable('starboard', 'starboard controller', 0.00015, 0.0001),
      ],
      draws: [load('port controller', 14_500), load('starboard controller', 12_300)],
    },
    fault: ['port controller+', 'port controller-'],
  },
  'two banks with a link, and a loop': {
    network: {
      sources: [bank('first', 108, 0.014), bank('second', 106.4, 0.014)],
      links: [
        ...cable('first', 'second', 0.0003),
        ...cable('first', 'left', 0.0011, 0.0012),
        ...cable('second', 'right', 0.0009, 0.00095),
        ...cable('left', 'right', 0.00052, 0.00055),
        ...cable('right', 'motor', 0.0008),
      ],
      draws: [
        load('left', 4200),
        load('motor', 21_000),
        { negative: 'first-', positive: 'first+', current: -35 },
      ],
    },
    fault: ['right+', 'right-'],
  },
  'long feed of a house with a converter of constant power': {
    network: {
      sources: [bank('bank', 52.3, 0.0064)],
      links: [
        ...cable('bank', 'panel', 0.0021),
        ...cable('panel', 'converter', 0.192, 0.188),
        ...cable('panel', 'lights', 0.061),
      ],
      // 93 % of what can reach the converter.
      draws: [
        load('converter', 1600),
        load('lights', 120),
        { negative: 'panel-', positive: 'panel+', current: 8.5 },
      ],
    },
    fault: ['converter+', 'converter-'],
  },
}
