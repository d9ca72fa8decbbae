import { caution } from '../caution.ts'

export default caution('stored-charge', {
  fires: `job "Launch" { vessel: "Launch 07" }
battery house { nominal: 96 V  window: 84..108 V }
drive main {
  controller { input: 72..120 V  capacitance: 6.8 mF }
# ^^^^^^^^^^ holds 39.7 J
}`,
  quiet: `job "Launch" { vessel: "Launch 07" }
battery house { nominal: 24 V  window: 20..28 V }
drive main {
  controller { input: 20..30 V  capacitance: 0.4 mF }
}`,
})
