import { caution } from '../caution.ts'

export default caution('live-voltage', {
  fires: `job "Launch" { vessel: "Launch 07" }
battery house { nominal: 96 V  window: 84..108 V }
# <- reaches 108 V
drive main { }`,
  quiet: `job "Launch" { vessel: "Launch 07" }
battery house { nominal: 24 V  window: 21..29 V }
drive main { }`,
})
