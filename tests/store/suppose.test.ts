// What would follow if a block said something else is what follows where it is written so.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cableLoading } from '../../server/src/areas/electrical/plans/cable-loading.ts'
import { storeOf } from '../../server/src/store/store.ts'
import { Session, withInside } from './jobs.ts'

const job = (mm2: number): string => `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  battery: house
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: ${mm2} mm2  length: 2.5 m  insulation: 105 degC }
  cable aft { from: house  to: controller  conductor: 35 mm2  length: 2.5 m  insulation: 105 degC }
}
`
const sizes = fc.constantFrom(0.75, 10, 25, 50, 95, 120, 400)

function opened(text: string) {
  const session = new Session()
  const file = session.file(text)
  const store = storeOf(session.analysis, file)
  const all = withInside(session.analysis.blocks(file))
  const lookupOf = (path: string) => {
    const block = all.find((one) => one.path === path)
    if (!block) throw new Error(`no block ${path}`)
    return store.fileLookup.from(block)
  }
  return { session, file, feed: lookupOf('main.feed'), aft: lookupOf('main.aft') }
}

describe('a supposition', () => {
  it('is as good as the text, for the block and for others', () => {
    fc.assert(
      fc.property(sizes, sizes, (now, then) => {
        const { feed, aft } = opened(job(now))
        const loadings = () => [feed, aft].map((one) => cableLoading(one.block, one))
        const found = feed.suppose('cable.conductor', then * 1e-6, loadings)
        const written = opened(job(then))
        expect(found).toEqual([written.feed, written.aft].map((one) => cableLoading(one.block, one)))
      }),
    )
  })

  it('leaves nothing behind', () => {
    fc.assert(
      fc.property(sizes, sizes, fc.boolean(), (now, then, isAskedBefore) => {
        const { session, file, feed } = opened(job(now))
        if (isAskedBefore) cableLoading(feed.block, feed)
        feed.suppose('cable.conductor', then * 1e-6, () => cableLoading(feed.block, feed))
        const after = cableLoading(feed.block, feed)
        const fresh = opened(job(now))
        expect(after).toEqual(cableLoading(fresh.feed.block, fresh.feed))
        expect(session.findings(file).map(({ message }) => message)).toEqual(
          fresh.session.findings(fresh.file).map(({ message }) => message),
        )
        expect(session.worked(file)).toEqual([])
      }),
    )
  })

  it('ends with what is thrown in it', () => {
    const { feed } = opened(job(50))
    const before = cableLoading(feed.block, feed)
    expect(() =>
      feed.suppose('cable.conductor', 1e-6, () => {
        throw new Error('stop')
      }),
    ).toThrow('stop')
    expect(cableLoading(feed.block, feed)).toBe(before)
  })
})
