// Boats that look random, each with a propeller, a motor, a bank and a service that may or may not suit each other. All data invented.
import type { Random } from '../../fuzz/random.ts'
import { boat } from './boat.ts'

/** A boat with every figure of its propulsion that has a limit. */
export function randomBoat({ next, pick, chance }: Random): string {
  const between = (low: number, high: number) => low + (high - low) * next()
  const [diameter, load] = [between(300, 600), between(0.3, 2)]
  const power = between(5, 25)
  const rated = between(1000, 2000)
  const optional = (text: string) => (chance(0.5) ? text : '')
  const resistance = [3, 4, 5, 6, 7, 8].map((knots) => `${knots} kn ${(load * 2 * knots ** 3).toFixed(1)} N`)
  const points = ['out', 'home'].map(
    (name) =>
      `point ${name} { boat-speed: ${between(3, 8).toFixed(2)} kn  time: ${between(0.2, 4).toFixed(1)} h }`,
  )
  const lead = chance(0.3)
  const torque = ((power * 1e3) / rated) * (30 / Math.PI)
  return boat({
    hull: `calm-water-resistance: ${resistance.join(', ')} ${optional('wake-fraction: 12 %  thrust-deduction: 9 %')}`,
    service: `water: ${pick(['sea', 'fresh', 'brackish'])}  water-temperature: ${between(2, 28).toFixed(1)} degC  reserve: 20 %  sea-margin: 10 %  range: min ${between(3, 30).toFixed(1)} nmi  ${points.join('  ')}`,
    battery: `nominal: 96 V  window: 84..108 V  capacity: ${between(100, 500).toFixed(0)} Ah  chemistry: ${lead ? 'agm' : 'lfp'}  current: ${between(60, 300).toFixed(0)} A`,
    propeller: `diameter: ${diameter.toFixed(0)} mm  pitch: ${(diameter * between(0.6, 1.2)).toFixed(0)} mm  blades: ${pick([3, 4, 5])}  blade-area-ratio: ${between(31, 70).toFixed(1)} %  depth: 0.4 m`,
    gear: `ratio: ${between(1.5, 3).toFixed(2)}  efficiency: 96 %  rated-torque: ${(torque * between(0.7, 1.5)).toFixed(1)} N·m`,
    motor: `power: ${power.toFixed(1)} kW  speed: ${rated.toFixed(0)} rpm  max-speed: ${(rated * between(1, 1.8)).toFixed(0)} rpm  efficiency: 92 %`,
  })
}
