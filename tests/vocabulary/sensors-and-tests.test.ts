// The values of sensors and test records, and what is refused.
import { describe, expect, it } from 'vitest'
import { factValue, read } from '../job/meaning.ts'

const said = (kind: string, fact: string, value: string) => {
  const { blocks, problems } = read(`${kind} x { ${fact}: ${value} }`)
  return { value: factValue(blocks, `${kind}.${fact}`), problems: problems.map(({ type }) => type) }
}
const inTest = (fact: string, value: string) => said('test', fact, value)

describe('kinds of sensor', () => {
  it('are a list of words, each once', () => {
    expect(said('controller', 'sensor-input', 'pt1000, ntc, pt1000').value).toMatchObject([
      { word: 'pt1000' },
      { word: 'ntc' },
    ])
  })

  it.each(['pt500', '1000', 'pt1000 ntc'])('%s is refused', (value) => {
    expect(said('controller', 'sensor-input', value)).toEqual({
      value: undefined,
      problems: ['not-this-value'],
    })
  })
})

describe('amounts by mark', () => {
  it('keep the mark as written, in quotes where it begins with a digit', () => {
    const { value } = inTest('resistances', 'U-V 14 mohm, "1U1-1V1" 0.0143 ohm')
    expect(value).toMatchObject([
      { mark: 'U-V', value: 0.014 },
      { mark: '1U1-1V1', value: 0.0143 },
    ])
  })

  it.each([
    ['14.2 mohm', 'not-this-value'],
    ['U-V 14.2', 'no-unit'],
    ['U-V 14.2 V', 'wrong-kind'],
    ['U-V -14.2 mohm', 'outside-allowed'],
    ['U-V 14.2 mohm V-W 14.2 mohm', 'not-this-value'],
  ])('%s is refused', (value, problem) => {
    const found = inTest('resistances', value)
    expect(found.value).toBeUndefined()
    expect(found.problems).toContain(problem)
  })
})

describe('what is permitted', () => {
  it('is of the quantity of its unit', () => {
    expect(inTest('permitted', 'max 5 %').value).toMatchObject({ quantity: 'ratio', high: 0.05 })
    expect(inTest('permitted', 'max 0.05 mm').value).toMatchObject({ quantity: 'length', high: 5e-5 })
    expect(inTest('permitted', 'min 1 Mohm').value).toMatchObject({ quantity: 'resistance', low: 1e6 })
    expect(inTest('permitted', '0.5..2 s').value).toMatchObject({ quantity: 'time', low: 0.5, high: 2 })
  })

  it.each(['max 5 kg', 'max 5 km', 'min 1e20 ohm', 'max'])('%s is refused', (value) => {
    expect(inTest('permitted', value).value).toBeUndefined()
  })
})

describe('B of a thermistor', () => {
  const beta = (value: string) => {
    const { blocks, problems } = read(`motor m {\n  sensor s { beta: ${value} }\n}`)
    const [sensor] = blocks[0]?.children ?? []
    return { value: sensor?.facts.get('beta')?.value, problems: problems.map(({ type }) => type) }
  }

  it('is in kelvin, and not in what counts from another zero', () => {
    expect(beta('3380 K').value).toBe(3380)
    expect(beta('3380 degC')).toEqual({ value: undefined, problems: ['not-this-value'] })
    expect(beta('5600 degF')).toEqual({ value: undefined, problems: ['not-this-value'] })
  })
})
