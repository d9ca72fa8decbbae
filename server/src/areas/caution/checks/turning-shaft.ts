import { caution } from '../caution.ts'

export default caution('turning-shaft', {
  fires: `job "Launch" { vessel: "Launch 07" }
drive main {
  coupling { flange-diameter: 125 mm }
# ^^^^^^^^ by the motor with 15 kW
  motor propulsion { power: 15 kW }
}`,
  quiet: `job "Launch" { vessel: "Launch 07" }
drive main {
  coupling { flange-diameter: 125 mm }
}`,
})
