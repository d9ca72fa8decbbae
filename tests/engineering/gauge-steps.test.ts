// Gauges that are made: common practice, no source.
import { describe, expect, it } from 'vitest'
import { gaugeStepMade } from '../../server/src/engineering/alignment/gauge-steps.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'

describe('the gauge to ask for', () => {
  it.each([
    ['metric', 0.014e-3, 0.01e-3],
    ['metric', 0.05e-3, 0.05e-3],
    ['metric', 1.9e-6, 1e-6],
    ['inch', 0.00012 * 0.0254, 0.0001 * 0.0254],
    ['inch', 0.003 * 0.0254, 0.001 * 0.0254],
  ] as const)('%s, fine enough at %s m, is %s m', (system, step, made) => {
    expect(gaugeStepMade(step, system)).toBeCloseTo(made, 12)
  })

  it('is none where none is as fine', () => {
    expect(gaugeStepMade(0.9e-6, 'metric')).toBeUndefined()
    expect(gaugeStepMade(0.00009 * 0.0254, 'inch')).toBeUndefined()
    expect(gaugeStepMade(0, 'metric')).toBeUndefined()
    expect(() => gaugeStepMade(Number.NaN, 'metric')).toThrow(OutOfRange)
  })
})

// Common practice, no source: dials are made with 0.002 mm too, and a gauge that is asked for reads at least as finely as is needed.
it('of 0.003 mm is 0.002 mm', () => {
  expect(gaugeStepMade(3e-6, 'metric')).toBeCloseTo(2e-6, 12)
})
