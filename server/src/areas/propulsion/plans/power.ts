import { type PowerTable, powerTable } from '../../../engineering/propulsion/power-table.ts'
import { type Block, childrenOf } from '../../../job/model.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { solve } from '../../../store/solve.ts'
import { markedAssumed } from '../../common/marked-assumed.ts'
import { failed, type Outcome, ok } from '../../common/outcome.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { attempt, Missing } from './attempt.ts'
import { driveSaid } from './drive-input.ts'
import { flowSaid, hullOf, resistanceSaid, serviceOf, waterSaid } from './hull-input.ts'

const solvePower = solve(powerTable)

/** The boat in balance with its propellers. */
export interface Power {
  /** In the order of the drives in the table. */
  readonly drives: readonly BlockId[]
  /** In the order of `asked` in the table. */
  readonly points: readonly BlockId[]
  readonly table: PowerTable
  readonly assumptions: readonly string[]
  /** Why there is no top speed: the motor of a drive is not known. */
  readonly noTop?: string
}

/** No fact says otherwise. */
export const equalShares = 'each drive gives an equal share of the thrust'

const distinct = (texts: readonly string[]): readonly string[] => [...new Set(texts)]

/** The points of the service whose speed can be read. */
const pointsOf = (service: Block | undefined): readonly { readonly point: Block; readonly speed: number }[] =>
  (service ? childrenOf(service, 'point') : []).flatMap((point) => {
    const speed = point.unread.has('boat-speed') ? undefined : statedSpeed(point)
    return speed === undefined ? [] : [{ point, speed }]
  })

function statedSpeed(point: Block): number | undefined {
  const outcome = attempt(() => ok(statedFact(point, 'point.boat-speed')))
  return outcome.ok ? outcome.value : undefined
}

/** Of the whole boat: all drives move the one hull. */
export const powerOfFile = (file: FileLookup): Outcome<Power> =>
  attempt(() => {
    const hull = hullOf(file)
    if (!hull) throw new Missing('the hull is not described: there is no `hull`')
    const drives = file.ofKind('drive')
    if (drives.length === 0) throw new Missing('the file has no drive')
    const service = serviceOf(file)
    const outcomes = drives.map((drive) => driveSaid(drive, file.from(drive)))
    const faulty = outcomes.find(({ ok: isKnown }) => !isKnown)
    if (faulty && !faulty.ok) return faulty
    const said = outcomes.flatMap((one) => (one.ok ? [one.value] : []))
    const { by, assumptions: ofHull } = resistanceSaid(hull)
    const { density, viscosity, assumptions: ofWater } = waterSaid(service)
    const flow = flowSaid(hull, drives.length)
    const margin = statedFact(service, 'service.sea-margin')
    const points = pointsOf(service)
    const noTop = said.find(({ noMotor }) => noMotor !== undefined)?.noMotor
    return ok({
      drives: drives.map(idOf),
      points: points.map(({ point }) => idOf(point)),
      table: solvePower({
        water: { density, viscosity },
        hull: by,
        margin: margin ?? 0,
        drives: said.map(({ drive }) => ({
          ...drive,
          wake: flow.wake,
          thrustDeduction: flow.thrustDeduction,
        })),
        speeds: points.map(({ speed }) => speed),
      }),
      assumptions: distinct([
        ...markedAssumed([hull, service]),
        ...ofHull,
        ...ofWater,
        ...flow.assumptions,
        ...(margin === undefined && by.by !== 'displacement-rule'
          ? ['calm water: no `sea-margin` is stated']
          : []),
        ...(drives.length > 1 ? [equalShares] : []),
        ...said.flatMap(({ assumptions }) => assumptions),
      ]),
      ...(noTop !== undefined && { noTop }),
    })
  })

/** A propeller at bollard, with its motor at all it can give. */
export interface Bollard {
  readonly state: NonNullable<PowerTable['bollard'][number]>
  readonly assumptions: readonly string[]
}

/** Needs no hull. Undefined where the drive does not say enough. */
export const bollardOf = plan(
  (drive: Block, lookup: Lookup): Outcome<Bollard> =>
    attempt(() => {
      const said = driveSaid(drive, lookup)
      if (!said.ok) return said
      const { drive: input, assumptions, noMotor } = said.value
      if (noMotor !== undefined) return failed({ type: 'unsaid', words: noMotor })
      const { density, viscosity, assumptions: ofWater } = waterSaid(serviceOf(lookup))
      const { bollard } = solvePower({
        water: { density, viscosity },
        margin: 0,
        // Neither has a part in the thrust of a propeller at rest.
        drives: [{ ...input, wake: 0, thrustDeduction: 0 }],
        speeds: [],
      })
      const [state] = bollard
      return state
        ? ok({
            state,
            assumptions: distinct([...ofWater.filter((words) => words.includes('sea')), ...assumptions]),
          })
        : failed({
            type: 'impossible',
            words:
              'The motor is too weak to turn the propeller at bollard, or nothing is known of it at so low a speed.',
          })
    }),
)
