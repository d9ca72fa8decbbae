import { type Verdict, verdictOn } from '../../quantity/conformity.ts'
import { expanded, type Uncertain } from '../../quantity/uncertainty.ts'
import { inRange, uncertain } from '../guard.ts'

/** Finest step (m) of a gauge met on board: a dial of 1 µm. Common practice, no source. */
const finestStep = 1e-6

const upperLimit = (limit: number): number => inRange('limit', limit, 1e-9, 100)

/** Verdict on a value against an upper limit, same unit: within when value + U ≤ limit, outside when value
 * - U > limit, else undecided; U with k = 2. OutOfRange for a limit that is not above 0 or a value that is
 * not a number. Source: decision rule of ISO 14253-1 (conformity and non-conformity are proved, each
 * against its own uncertainty).
 * @example verdict({ value: 0.08, standard: 0.02 }, 0.1) // 'undecided' */
export function verdict(measured: Uncertain, limit: number): Verdict {
  const { value } = uncertain('measured value', measured)
  return verdictOn({ high: upperLimit(limit) }, { value, uncertainty: expanded(measured) })
}

/** The gauge step (m) below which a verdict would be reached if the value came out the same, or undefined
 * when none could or none is asked for: it is reached already, the value is on the limit, the step would be finer than any gauge (1 µm), or the
 * readings disagree by more than their gauge explains (`gaugeExplains` of the fit), so that reading again
 * comes before a finer gauge. U goes with the step. [derived]
 * @example gaugeStepToDecide({ value: 0.09e-3, standard: 0.01e-3 }, 0.1e-3, { gaugeStep: 2e-5,
 * gaugeExplains: true }) // ≈ 1e-5 */
export function gaugeStepToDecide(
  measured: Uncertain,
  limit: number,
  { gaugeStep, gaugeExplains }: { readonly gaugeStep: number; readonly gaugeExplains: boolean },
): number | undefined {
  const { value } = uncertain('measured value', measured)
  const margin = Math.abs(upperLimit(limit) - value)
  if (!gaugeExplains || verdict(measured, limit) !== 'undecided') return undefined
  const step = (inRange('gauge step (m)', gaugeStep, 1e-8, 0.01) * margin) / expanded(measured)
  return step >= finestStep ? step : undefined
}
