import { caution } from '../caution.ts'

export default caution('heavy-machine', {
  fires: `job "Launch" { vessel: "Launch 07" }
drive main {
  motor propulsion { power: 15 kW  mass: 62 kg }
# ^^^^^^^^^^^^^^^^ weighs 62 kg
}`,
  quiet: `job "Launch" { vessel: "Launch 07" }
drive main {
  motor propulsion { power: 3 kW  mass: 18 kg }
}`,
})
