import { inRange } from '../guard.ts'

/** Steps (m) of gauges that are made, coarsest first: feelers by 0.05 and 0.02 mm, dials by 0.01 mm down to 1 µm; feelers and dials by 0.001 in,
 * dials by 0.0005 and 0.0001 in. Common practice, no source. */
const made: Readonly<Record<'metric' | 'inch', readonly number[]>> = {
  metric: [50e-6, 20e-6, 10e-6, 5e-6, 2e-6, 1e-6],
  inch: [25.4e-6, 12.7e-6, 2.54e-6],
}

/** The coarsest gauge step (m) that is made and is no coarser than `step` (m, above 0 to 1, else OutOfRange); undefined where none is as fine.
 * Common practice, no source.
 * @example gaugeStepMade(1.4e-5, 'metric') // 1e-5 */
export function gaugeStepMade(step: number, system: 'metric' | 'inch'): number | undefined {
  inRange('gauge step (m)', step, 0, 1)
  return made[system].find((one) => one <= step * (1 + 1e-9))
}
