import { caution } from '../caution.ts'

export default caution('short-circuit', {
  fires: `job "Launch" { vessel: "Launch 07" }
battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }
# <- reaches 7715 A
drive main { }`,
  quiet: `job "Launch" { vessel: "Launch 07" }
battery alarm { nominal: 12 V  window: 10..14 V  short-circuit-current: 15 A }
drive main { }`,
})
