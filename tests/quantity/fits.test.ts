// ISO 286-1 standard tolerances, micrometres (from memory: the values every workshop table repeats).
import { describe, expect, it } from 'vitest'
import { holds } from '../../server/src/quantity/band.ts'
import { fitBand } from '../../server/src/quantity/fits.ts'

const deviations = (millimetres: number, fit: string) => {
  const band = fitBand(millimetres / 1000, fit)
  const micrometres = (side: number | undefined) =>
    Math.round(((side ?? Number.NaN) - millimetres / 1000) * 1e7) / 10
  return band && [micrometres(band.low), micrometres(band.high)]
}

describe('ISO 286 classes', () => {
  it.each([
    [35, 'h9', [-62, 0]],
    [35, 'h6', [-16, 0]],
    [25, 'H7', [0, 21]],
    [50, 'H7', [0, 25]],
    [60, 'H8', [0, 46]],
    [10, 'h7', [-15, 0]],
    [100, 'h11', [-220, 0]],
    [30, 'js6', [-6.5, 6.5]],
    [3, 'h6', [-6, 0]],
  ] as const)('%d mm %s', (size, fit, expected) => {
    const found = deviations(size, fit)
    expect(found?.map((value) => value + 0)).toEqual(expected)
  })

  it.each([
    [35, 'k6'],
    [35, 'h4'],
    [35, 'h12'],
    [300, 'h9'],
    [0, 'h9'],
    [-35, 'h9'],
    [35, 'h'],
    [Number.NaN, 'h9'],
  ])('%d mm %s is not known', (size, fit) => {
    expect(fitBand(size / 1000, fit)).toBeUndefined()
  })
})

describe('limits', () => {
  it('hold their ends, also after a conversion there and back', () => {
    const band = { low: 0.024, high: 0.029 }
    for (const end of [0.024, 0.029]) expect(holds(band, (end / 0.0254) * 0.0254)).toBe(true)
    expect(holds(band, 0.0239)).toBe(false)
    expect(holds(band, 0.0291)).toBe(false)
    expect(holds({ high: 1 }, -5)).toBe(true)
    expect(holds({ low: 1 }, 5)).toBe(true)
  })
})
