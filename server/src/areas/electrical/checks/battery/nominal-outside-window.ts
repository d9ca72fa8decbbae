import { at, check, commonPractice } from '../../../../checks/check.ts'

export default check({
  id: 'battery/nominal-outside-window',
  severity: 'error',
  title: 'Nominal voltage outside the window',
  why: 'One of the two is wrong. Currents are calculated at the low end of the window, fault current and danger at the high end.',
  source: commonPractice('a battery is at its nominal voltage at some time while it is used, no source'),
  on: 'battery',
  needs: { nominal: 'battery.nominal', window: 'battery.window' },
  fires: `battery house {
  nominal: 96 V
#          ^^^^ outside
  window: 42..56 V
}`,
  quiet: `battery house {
  nominal: 48 V
  window: 42..56 V
}`,
  run: ({ nominal, window }, { show, showBand }) => {
    const { low = 0, high = Number.POSITIVE_INFINITY } = window.value
    if (nominal.value >= low && nominal.value <= high) return []
    const found = show(nominal.value, 'voltage')
    const limit = showBand(window.value, 'voltage')
    return [
      at(nominal, {
        message: `The nominal voltage, ${found}, is outside the window.`,
        detail: `The window is ${limit}.`,
        todo: 'Correct the one that is wrong, from the data of the maker.',
        found,
        limit,
        related: [{ at: window.at, message: 'the window' }],
      }),
    ]
  },
})
