import { reaches } from '../../../engineering/compare.ts'
import {
  type ConductorLimit,
  type ConductorVerdict,
  carriesLoad,
  conductorLimit,
  judgeConductor,
  judgeRating,
  largestRating,
  leastRating,
  type ProtectionWindow,
  protectionWindow,
  type RatingVerdict,
} from '../../../engineering/electrical/protection.ts'
import {
  largestStandardRating,
  type RatingSeries,
  standardRatings,
} from '../../../engineering/electrical/standard-ratings.ts'
import { type Block, childrenOf, factOf, type Place } from '../../../job/model.ts'
import { greatest } from '../../../quantity/extremes.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { BlockId } from '../../../store/block-id.ts'
import type { FileLookup, Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { isSeries, stringOf } from '../../common/battery-string.ts'
import { statedFact, Unreadable } from '../../common/stated-fact.ts'
import { chargedAsUsual, highestOfString, onCharge } from '../../common/string-facts.ts'
import { type CableAmpacity, cableAmpacity, sectionOf } from './cable-ampacity.ts'
import { batteriesOf } from './cable-batteries.ts'
import { endsOf, systemOf } from './cable-circuit.ts'
import { poleOf } from './cable-pole.ts'
import { type CableCurrent, cableCurrent, motorsAt } from './design-current.ts'
import { coolFuse, type FuseHeat } from './fuse-ambient.ts'
import {
  besideOf,
  cablesBeside,
  convertersFeeding,
  isFedUnprotected,
  type Limit,
  letThroughTo,
} from './let-through.ts'

/** The cables that some protection blocks protect. */
interface Protected {
  readonly cables: ReadonlySet<BlockId>
  /** One of them names what it protects so that it could not be read: it may be any. */
  readonly mayBeAny: boolean
}

function protectedBy(protections: readonly Block[], from: (protection: Block) => Lookup): Protected {
  const cables = protections.flatMap((one) => from(one).referred('in') ?? [])
  return {
    cables: new Set(cables.map(idOf)),
    mayBeAny: protections.some(({ unread }) => unread.has('in')),
  }
}

const protectedInside = plan((drive, lookup) => protectedBy(childrenOf(drive, 'protection'), lookup.from))
const protectedInFile = ({ ofKind, from }: FileLookup): Protected => {
  const inDrives = ofKind('drive').flatMap((drive) => childrenOf(drive, 'protection'))
  return protectedBy([...ofKind('protection'), ...inDrives], from)
}

/** Whether a protection block says that it protects this cable, or names what it protects so that it could not be read. */
export function isProtected(cable: Block, lookup: Lookup): boolean {
  const isAmong = ({ cables, mayBeAny }: Protected): boolean => mayBeAny || cables.has(idOf(cable))
  return (
    (cable.parent !== undefined && isAmong(protectedInside(cable.parent, lookup))) ||
    isAmong(lookup.ofFile(protectedInFile))
  )
}

/** A cable to a fuse is that fuse's lead up to 40 in, 33 CFR 183.455(b)(2). m. */
const longestLead = 40 * 0.0254

/** Whether a DC cable is fed without any fuse or breaker on the way, from one of its ends or the other, and is no short lead from a battery to one.
 * Where what it joins is not known, one from a battery is held to name its own. One in a string needs none of its own: that of the string
 * opens it. Nor does one of the negative pole: that in the positive opens the circuit. */
export function isUnprotected(cable: Block, lookup: Lookup): boolean {
  if (isSeries(cable) || poleOf(cable) === 'negative') return false
  return (
    isFedUnprotected(cable, longestLead, lookup) ??
    (endsOf(cable, lookup).some((end) => end?.kind === 'battery') && !isProtected(cable, lookup))
  )
}

/** The highest voltage the circuit sees, V: a battery whose window is not said goes to `overNominal` times its nominal. Undefined when it is not
 * known. */
export function highestOf(cable: Block, lookup: Lookup, overNominal = 1): number | undefined {
  try {
    const volts = batteriesOf(cable, lookup).map(
      (battery) => highestOfString(stringOf(battery, lookup), overNominal) ?? 0,
    )
    const motors = systemOf(cable, lookup) === 'three-phase' ? motorsAt(cable, lookup) : []
    const outputs = convertersFeeding(cable, lookup).map(
      (one) => statedFact(one, 'converter.output')?.high ?? 0,
    )
    const highest =
      greatest([
        0,
        ...volts,
        ...outputs,
        ...motors.map((motor) => statedFact(motor, 'motor.voltage') ?? 0),
      ]) ?? 0
    return highest > 0 ? highest : undefined
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

/** `not-shown`: the cable is smaller than every row of the tables, so nothing shows that it is protected. */
type NotShown = 'not-shown'

export interface CableVerdict {
  readonly verdict: ConductorVerdict | NotShown
  readonly limit: ConductorLimit
  /** The largest rating that is borne, A. */
  readonly largest: number
  /** Where the standard ratings are from, and the largest of them, A. */
  readonly ratings: string
  readonly largestStandard: number
  readonly carrying: CableAmpacity
}

/** What decides how large a rating the cable bears; undefined when it cannot be told what it carries. */
function protectable(cable: Block | undefined, lookup: Lookup) {
  if (!cable) return undefined
  const from = lookup.from(cable)
  const carrying = cableAmpacity(cable, from)
  // No fuse protects a cable in air too hot for its insulation: that has a finding of its own.
  if (!carrying.ok || carrying.value.carries === 0) return undefined
  const { area, carries: ampacity } = carrying.value
  const series: RatingSeries = sectionOf(area).system === 'awg' ? 'us' : 'iec'
  const volts = highestOf(cable, from, onCharge)
  const stated = highestOf(cable, from)
  const assumptions =
    volts === stated ? carrying.value.assumptions : [...carrying.value.assumptions, chargedAsUsual]
  return { carrying: { ...carrying.value, assumptions }, series, given: { ampacity, volts } }
}

/** Below the tables what a cable carries is only an upper bound: it can show that a rating is too large, and never that it is not. */
const orNotShown = <V extends RatingVerdict>(verdict: V, { ampacity }: CableAmpacity): V | NotShown =>
  ampacity.tables === 'below' && (verdict === 'within' || verdict === 'allowed-above') ? 'not-shown' : verdict

/** How a rating (A) stands to the cable it protects, whatever the load; undefined when it cannot be told what the cable carries. */
export function ratingToCable(
  rating: number,
  cable: Block | undefined,
  lookup: Lookup,
): CableVerdict | undefined {
  const protects = protectable(cable, lookup)
  if (!protects) return undefined
  const { carrying, series, given } = protects
  const limit = conductorLimit(given)
  return {
    verdict: orNotShown(judgeConductor(rating, limit, series), carrying),
    limit,
    largest: largestRating(limit, series),
    ratings: standardRatings[series].source,
    largestStandard: largestStandardRating(series),
    carrying,
  }
}

export interface LoadVerdict {
  readonly carries: boolean
  /** Least rating for the load, A. */
  readonly low: number
  readonly load: CableCurrent
  readonly assumptions: readonly string[]
}

/** How a rating (A) in some heat stands to the load of its cable, whatever the cable carries; undefined when the load is not known. */
export function ratingToLoad(
  rating: number,
  cable: Block | undefined,
  lookup: Lookup,
  heat: FuseHeat,
): LoadVerdict | undefined {
  const load = cable && cableCurrent(cable, lookup.from(cable))
  if (!load?.ok) return undefined
  const low = leastRating(load.value.current) / heat.share
  return {
    carries: carriesLoad(rating, low),
    low,
    load: load.value,
    assumptions: [...load.value.assumptions, ...heat.assumptions],
  }
}

export interface JudgedRating {
  readonly verdict: RatingVerdict | NotShown
  readonly window: ProtectionWindow
  readonly load: CableCurrent
  readonly carrying: CableAmpacity
}

/** How a rating (A) in some heat stands to the load and the cable it protects; undefined when the one or the other cannot be told. */
export function ratingOf(
  rating: number,
  cable: Block | undefined,
  lookup: Lookup,
  heat = coolFuse,
): JudgedRating | undefined {
  const load = cable && cableCurrent(cable, lookup.from(cable))
  const protects = protectable(cable, lookup)
  if (!load?.ok || !protects) return undefined
  const { carrying, series, given } = protects
  const window = protectionWindow({ current: load.value.current / heat.share, ...given })
  const verdict = orNotShown(judgeRating(rating, window, series), carrying)
  return { verdict, window, load: load.value, carrying }
}

/** The smallest rating that is made, of the cable's own series, that carries the load and protects the cable, A (source: beside the ratings
 * themselves), in some heat. Undefined when the cable is too thin for any, or the one or the other cannot be told. */
export function fittingRating(cable: Block | undefined, lookup: Lookup, heat = coolFuse): number | undefined {
  const series = protectable(cable, lookup)?.series
  return (
    series &&
    standardRatings[series].amps.find((rating) => {
      const verdict = ratingOf(rating, cable, lookup, heat)?.verdict
      return verdict === 'within' || verdict === 'allowed-above'
    })
  )
}

/** What fuses and breakers let through to a cable where that is more than it allows. */
interface FedBeyond {
  /** A. */
  readonly amps: number
  /** The part of it that the cable takes of those beside it, from 0 to 1. */
  readonly share: number
  /** The largest rating that protects the cable, A; where several feed it, what it can carry. */
  readonly allowed: number
  readonly carrying: CableAmpacity
  /** Whether the device is behind the cable, which leads from a battery to it. */
  readonly isLead: boolean
  readonly devices: readonly RatedDevice[]
}

interface RatedDevice {
  readonly head: Place
  readonly rating: number
}

/** The part of a current that a cable takes of those that join the same places: cables side by side share it by their conductance, Ohm's law. Undefined
 * where the size or the length of one is not known. */
function shareOf(cable: Block, lookup: Lookup): number | undefined {
  const { first, count } = besideOf(cable, lookup)
  if (count === 1) return 1
  const all = conductanceBeside(lookup.blockOf(first), lookup)
  return all === undefined ? undefined : conductanceOf(cable) / all
}

/** Section over length; not a number where one is not known. */
function conductanceOf(cable: Block): number {
  const { value: area = Number.NaN } = factOf(cable, 'cable.conductor') ?? {}
  const { value: length = Number.NaN } = factOf(cable, 'cable.length') ?? {}
  return (area * (factOf(cable, 'cable.parallel')?.value ?? 1)) / length
}

const conductanceBeside = plan((first: Block, lookup: Lookup): number | undefined => {
  const all = cablesBeside(first, lookup).map((id) => conductanceOf(lookup.blockOf(id)))
  const sum = all.reduce((total, one) => total + one, 0)
  return Number.isFinite(sum) ? sum : undefined
})

/** What fuses and breakers elsewhere let through to a DC cable, to the piece and from the end to which it is most, where that is more than the cable
 * allows; undefined where it is not, or cannot be told. A device that is in the cable itself is held against it by its own check. */
export function fedBeyond(cable: Block, lookup: Lookup): FedBeyond | undefined {
  const share = shareOf(cable, lookup)
  if (share === undefined) return undefined
  const beyond = (letThroughTo(cable, lookup) ?? []).flatMap(({ amps, limitedBy, isLead }) => {
    if (amps === 0 || !Number.isFinite(amps)) return []
    const to = ratingToCable(amps * share, cable, lookup)
    if (!to || reaches(to.limit.high, amps * share)) return []
    // One whose rating is not known is none of them.
    const known = limitedBy.filter(({ rating }) => rating > 0)
    const [only, ...others] = known
    if (!only || (others.length === 0 && isIn(only, cable, lookup))) return []
    // The next standard rating above what a cable can carry is allowed of one device for one cable.
    const allowed = others.length === 0 && share === 1 ? to.largest : to.limit.high
    if (reaches(allowed, amps * share)) return []
    const devices = known.map(({ device, rating }) => ({ head: lookup.blockOf(device).head, rating }))
    return [{ amps, share, allowed, carrying: to.carrying, devices, isLead }]
  })
  return beyond.reduce<FedBeyond | undefined>(
    (most, one) => (most && most.amps >= one.amps ? most : one),
    undefined,
  )
}

const isIn = ({ device }: Limit, cable: Block, lookup: Lookup): boolean =>
  lookup.from(lookup.blockOf(device)).referred('in') === cable

/** Whether one more fuse in a cable is enough: it is where most comes from, so what comes from the other end has to be allowed already. A cable beside
 * others needs more, for it leaves all current to them when its fuse opens. */
export function isOneFuseEnough(cable: Block, lookup: Lookup): boolean {
  if (besideOf(cable, lookup).count > 1) return false
  const fed = letThroughTo(cable, lookup) ?? []
  const [from, to] = [fed.at(0), fed.at(-1)]
  if (!from || !to) return true
  const { amps, limitedBy } = from.amps <= to.amps ? from : to
  if (amps === 0) return true
  if (!Number.isFinite(amps)) return false
  const verdict = ratingToCable(amps, cable, lookup)?.verdict
  const isOwn = limitedBy.some((limit) => isIn(limit, cable, lookup))
  return isOwn || verdict === 'within' || (verdict === 'allowed-above' && limitedBy.length === 1)
}
