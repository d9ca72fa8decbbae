import type { Random } from '../../fuzz/random.ts'

/** A job with one drive, its battery, controller, cables and fuse of any size, some facts left out: most have something to find. */
export function randomElectrics({ pick, chance }: Pick<Random, 'pick' | 'chance'>): string {
  const some = (fact: string) => (chance(0.8) ? fact : '')
  const nominal = pick([24, 48, 96, 144, 400])
  return `job "Trial" { vessel: "Invented" }
battery house {
  nominal: ${nominal} V
  ${some(`window: ${Math.round(nominal * 0.87)}..${Math.round(nominal * 1.13)} V`)}
  ${some(`internal-resistance: ${pick([5, 14, 40])} mohm`)}
}
drive main {
  propeller { diameter: 420 mm  turns: right-hand }
  motor propulsion {
    power: ${pick([3, 15, 60])} kW
    voltage: ${Math.round(nominal * 0.6)} V
    ${some(`mass: ${pick([18, 62, 140])} kg`)}
    ${some(`terminals: U, V, ${pick(['W', 'U'])}`)}
    ${some(`speed: 1500 rpm  turns: ${pick(['clockwise', 'counter-clockwise'])}`)}
  }
  controller {
    input: ${Math.round(nominal * pick([0.7, 0.95]))}..${Math.round(nominal * pick([1.05, 1.3]))} V
    ${some(`capacitance: ${pick([0.5, 6.8])} mF`)}
    ${some('terminals: A, B, C')}
  }
  cable feed {
    from: house
    to: ${pick(['controller', 'controller', 'propulsion', 'house'])}
    conductor: ${pick([10, 25, 70, 95, 240])} mm2
    length: ${pick([2.5, 12, 40])} m
    insulation: 105 degC
    ${some('place: machinery-space')}
  }
  ${some(`protection fuse { rating: ${pick([40, 200, 315, 630])} A  in: feed  ${some(`interrupts: ${pick([2, 20])} kA`)}  ${some(`voltage: ${pick([32, 125])} V`)}  ${some(`at: ${pick([150, 600, 1200])} mm`)} }`)}
  cable phases { from: controller  to: propulsion  conductor: ${pick([10, 70])} mm2  length: 1.8 m  insulation: 105 degC }
  phase-map { A to U, B to V, C to ${pick(['W', 'V', 'X'])} }
  contactor main { current: 250 A  voltage: 150 V  ${some(`makes: ${pick([200, 2000])} A`)} }
  ${some(`precharge { around: main  resistance: ${pick([4.7, 47])} ohm  ${some(`energy: ${pick([5, 120])} J`)}  ${some(`power: ${pick([1, 25])} W`)}  interval: 20 s  closes-at: ${pick([80, 95])} % }`)}
  ${some(`seal { shaft-size: 35 mm  ${some('compression: 26 mm +3/-2 mm')}  free-length: 148 mm  fitted-length: ${pick([121, 135, 150])} mm }`)}
}
`
}
