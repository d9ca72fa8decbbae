// Motors with test records that look random, most of them sound. All data invented.
import type { Random } from '../../fuzz/random.ts'

/** A job with one motor and a record of each kind that has figures with limits. */
export function randomTests({ next, pick, chance }: Random): string {
  const between = (low: number, high: number) => low + (high - low) * next()
  const mohm = (mean: number) => `${(mean * (1 + between(-1, 1) * pick([0.005, 0.02, 0.1]))).toFixed(3)} mohm`
  const celsius = between(-5, 90)
  const ohms = 1000 * (1 + 3.9083e-3 * celsius - 5.775e-7 * celsius ** 2) * pick([1, 1, 1, 1.01, 1.06])
  const early = 10 ** between(5.5, 10)
  const optional = (text: string) => (chance(0.5) ? text : '')
  return `job "random" { vessel: "x" }
drive main {
  motor m {
    voltage: ${pick([58, 100, 400, 1200])} V
    terminals: U, V, W
    ${optional(`winding: ${pick(['random', 'form'])}`)}
    ${optional(`winding-insulation: ${pick(['thermoplastic', 'thermosetting'])}`)}
    ${optional(`thermal-class: ${pick(['A', 'F', 'H'])}`)}
    sensor s { kind: pt1000 }
  }
  controller { capacitance: 6.8 mF ${optional('discharge-resistance: 2 kohm')} }
  contactor main { current: 250 A }
  precharge { around: main  resistance: ${pick([47, 470])} ohm  closes-after: 2 s }
  test t1 {
    kind: insulation-resistance
    on: m
    taken: 2026-03-01
    voltage: 500 V
    resistance: ${early.toPrecision(4)} ohm
    resistance-10-min: ${Math.min(early * between(0.5, 4), 1e12).toPrecision(4)} ohm
    temperature: ${celsius.toFixed(1)} degC
    ${optional(`permitted: min ${between(1, 100).toFixed(1)} Mohm`)}
  }
  test t2 {
    kind: phase-resistance
    on: m
    taken: 2026-03-01
    resistances: U-V ${mohm(14)}, V-W ${mohm(14)}, W-U ${mohm(14)}
    temperature: 18 degC
    ${optional(`permitted: max ${between(0.5, 5).toFixed(2)} %`)}
  }
  test t3 {
    kind: sensor
    on: m.s
    taken: 2026-03-01
    resistance: ${ohms.toFixed(2)} ohm
    temperature: ${celsius.toFixed(1)} degC
  }
  test t4 {
    kind: run-out
    on: m
    taken: 2026-03-01
    run-out: ${between(0.005, 0.2).toFixed(3)} mm
    where: ${pick(['shaft', 'face', 'register'])}
    diameter: ${between(12, 200).toFixed(1)} mm
    ${optional(`permitted: max ${between(0.02, 0.1).toFixed(3)} mm`)}
  }
  test t5 {
    kind: precharge
    on: controller
    taken: 2026-03-01
    voltage: 98 V
    end-voltage: ${between(60, 99).toFixed(1)} V
    time: ${(10 ** between(-1.5, 1.5)).toPrecision(3)} s
  }
}
`
}
