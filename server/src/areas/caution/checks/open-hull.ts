import { caution } from '../caution.ts'

export default caution('open-hull', {
  fires: `job "Launch" { vessel: "Launch 07" }
drive main {
  shaft { diameter: 35 mm }
  shaft-log { bore: 60 mm }
  seal { compression: 26 mm +3/-2 mm }
# ^^^^ water can enter through the 60 mm
}`,
  quiet: `job "Launch" { vessel: "Launch 07" }
drive main {
  seal { compression: 26 mm +3/-2 mm }
  reading dry-1 { taken: 2026-03-04  afloat: no }
}`,
})
