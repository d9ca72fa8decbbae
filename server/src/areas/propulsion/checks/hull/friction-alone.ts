import { at, check, published } from '../../../../checks/check.ts'

export default check({
  id: 'hull/friction-alone',
  severity: 'warning',
  title: 'Friction without the waves, or waves without friction',
  why: 'Near hull speed most of the resistance of a displacement boat is waves. Friction alone would show far too little power, so neither is used without the other.',
  source: published('ITTC 1957 model-ship correlation line: it gives friction only'),
  on: 'hull',
  wants: {
    area: 'hull.wetted-area',
    waves: 'hull.wave-resistance',
    points: 'hull.calm-water-resistance',
  },
  fires: `hull {
  displacement: 5.6 t
  waterline-length: 9.2 m
  wetted-area: 24 m2
#              ^^^^^ alone
}`,
  quiet: `hull {
  displacement: 5.6 t
  waterline-length: 9.2 m
  wetted-area: 24 m2
  wave-resistance: 4 kn 0.1 kN, 6 kn 0.6 kN
}`,
  run: ({ area, waves, points }) => {
    const only = area && !waves ? area : !area && waves ? waves : undefined
    if (!only || points) return []
    return [
      at(only, {
        message:
          only === area
            ? 'The wetted area alone gives only friction.'
            : 'The wave resistance alone leaves out friction.',
        detail: 'It is not used: the displacement-hull rule is, if length and displacement are stated.',
        todo:
          only === area
            ? 'Add the `wave-resistance`, or state `calm-water-resistance`.'
            : 'Add the `wetted-area`, or state `calm-water-resistance`.',
      }),
    ]
  },
})
