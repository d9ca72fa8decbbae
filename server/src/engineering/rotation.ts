/** Which way motor, shaft and propeller turn. A direction is seen from one side: of a motor facing its drive end, of a shaft from astern, looking
 * forward. */
export type Rotation = 'clockwise' | 'counter-clockwise'
export type Hand = 'right-hand' | 'left-hand'

/** The other way round.
 * @example otherWay('clockwise') // 'counter-clockwise' */
export const otherWay = (rotation: Rotation): Rotation =>
  rotation === 'clockwise' ? 'counter-clockwise' : 'clockwise'

/** How a motor turns, facing its drive end. `stated`: with the phases in the order of its terminals. Each of two exchanged phases and a reversed
 * controller turns it the other way, both together as stated. Source: IEC 60034-8.
 * @example motorRotation({ stated: 'clockwise', isExchanged: true, isReversed: false }) // 'counter-clockwise' */
export const motorRotation = (given: {
  readonly stated: Rotation
  readonly isExchanged: boolean
  readonly isReversed: boolean
}): Rotation => (given.isExchanged === given.isReversed ? given.stated : otherWay(given.stated))

/** How the shaft turns, looking forward, behind a motor that turns so facing its drive end. `gear` absent: direct. Who faces the drive end of a motor
 * that has it toward the propeller looks forward, so the two views are one. A motor with its drive end forward turns the shaft the other way. Source:
 * the definitions of the two views.
 * @example shaftRotation({ motor: 'clockwise', driveEnd: 'aft', gear: 'opposite' }) // 'counter-clockwise' */
export function shaftRotation(given: {
  readonly motor: Rotation
  readonly driveEnd: 'aft' | 'forward'
  readonly gear?: 'same' | 'opposite' | undefined
}): Rotation {
  const seen = given.driveEnd === 'aft' ? given.motor : otherWay(given.motor)
  return given.gear === 'opposite' ? otherWay(seen) : seen
}

/** How a shaft must turn for its propeller to drive ahead, looking forward. Source: a right-hand propeller turns clockwise going ahead, seen from
 * astern (ISO 484 and any text on propellers, from memory).
 * @example aheadRotation('left-hand') // 'counter-clockwise' */
export const aheadRotation = (hand: Hand): Rotation =>
  hand === 'right-hand' ? 'clockwise' : 'counter-clockwise'

/** The hand that a propeller needs so that two screws turn so: `outward` are those whose blades move away from the centreline at the top, seen from
 * astern. `side` of the boat, starboard or port. Source: the definitions.
 * @example screwHand('outward', 'starboard') // 'right-hand' */
export const screwHand = (screws: 'outward' | 'inward', side: 'port' | 'starboard'): Hand =>
  (screws === 'outward') === (side === 'starboard') ? 'right-hand' : 'left-hand'
