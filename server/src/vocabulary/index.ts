import { nearest } from '../quantity/nearest.ts'
import type { BlockKind } from './block.ts'
import { closestMatch } from './closest-match.ts'
import { battery } from './kinds/battery.ts'
import { bearing } from './kinds/bearing.ts'
import { bed } from './kinds/bed.ts'
import { busbar } from './kinds/busbar.ts'
import { cable } from './kinds/cable.ts'
import { charger } from './kinds/charger.ts'
import { concession } from './kinds/concession.ts'
import { contactor } from './kinds/contactor.ts'
import { controller } from './kinds/controller.ts'
import { converter } from './kinds/converter.ts'
import { coupling } from './kinds/coupling.ts'
import { drive } from './kinds/drive.ts'
import { foot } from './kinds/foot.ts'
import { gear } from './kinds/gear.ts'
import { hull } from './kinds/hull.ts'
import { isolator } from './kinds/isolator.ts'
import { job } from './kinds/job.ts'
import { load } from './kinds/load.ts'
import { motor } from './kinds/motor.ts'
import { move } from './kinds/move.ts'
import { phaseMap } from './kinds/phase-map.ts'
import { point } from './kinds/point.ts'
import { precharge } from './kinds/precharge.ts'
import { propeller } from './kinds/propeller.ts'
import { protection } from './kinds/protection.ts'
import { reading } from './kinds/reading.ts'
import { seal } from './kinds/seal.ts'
import { sensor } from './kinds/sensor.ts'
import { service } from './kinds/service.ts'
import { shaft } from './kinds/shaft.ts'
import { shaftLog } from './kinds/shaft-log.ts'
import { target } from './kinds/target.ts'
import { test } from './kinds/test.ts'
import type { Placed, Shape } from './shape.ts'

/** Every block kind, in the order of the work. A kind is declared in its own file and named here. */
export const vocabulary = {
  job,
  hull,
  service,
  point,
  battery,
  busbar,
  charger,
  converter,
  load,
  drive,
  propeller,
  shaft,
  bearing,
  'shaft-log': shaftLog,
  seal,
  coupling,
  gear,
  motor,
  sensor,
  bed,
  foot,
  target,
  reading,
  move,
  controller,
  cable,
  protection,
  isolator,
  contactor,
  precharge,
  'phase-map': phaseMap,
  test,
  concession,
} as const

export type BlockName = keyof typeof vocabulary

type FactsOf<K extends BlockName> = (typeof vocabulary)[K]['facts']

/** `seal.free-length`: a fact of a kind. */
export type FactPath = { [K in BlockName]: `${K}.${keyof FactsOf<K> & string}` }[BlockName]

/** What a fact's value is, by its path. Where the parts of a list are written is no part of it: see `placeOfPart`. */
export type FactValue<P extends FactPath> = P extends `${infer K extends BlockName}.${infer F}`
  ? F extends keyof FactsOf<K>
    ? FactsOf<K>[F] extends { readonly shape: Shape<infer T> }
      ? Unplaced<T>
      : never
    : never
  : never

type Unplaced<T> = T extends readonly Placed<infer Part>[] ? readonly Part[] : T

/** The kinds, whatever their facts. */
export const blockKinds = Object.values(vocabulary) as readonly unknown[] as readonly BlockKind[]

export const findKind = (name: string): BlockKind | undefined =>
  Object.hasOwn(vocabulary, name) ? (vocabulary[name as BlockName] as unknown as BlockKind) : undefined

const kindNames = Object.keys(vocabulary)

/** The kind of block meant by a word: `prop` for propeller. One or two letters are short for nothing in particular. */
export const kindMeant = (word: string): string | undefined =>
  word.length > 2 ? closestMatch(word, kindNames) : nearest(word, kindNames)
