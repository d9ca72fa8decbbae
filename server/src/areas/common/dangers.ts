// The one table of dangers: from what figure on each counts, where that is from, and in what words a person is warned. Findings, plans and hovers take
// their words from here, so that none says it differently.

interface DangerRow {
  readonly title: string
  /** Why, for the page of its check. */
  readonly why: string
  /** What is dangerous begins here, SI; absent where there is no harmless figure. */
  readonly from?: number
  readonly source: {
    readonly basis: 'published' | 'from memory' | 'common practice'
    readonly text: string
  }
  /** What to do, in the imperative. */
  readonly guard: string
}

// Said in a plan too, where they are steps of the work.

export const isolateFirst =
  'Isolate the drive and lock it off. Wait as long as the maker of the controller says, until its stored charge is gone.'
export const isolateBriefly = 'Isolate and lock off the drive. Prove it dead.'
export const keepClear = 'Keep hands and fingers from under the machine.'
export const batteryStaysLive = 'The battery stays live: work for a licensed person.'
export const lastWord =
  'The makers of the machine, the controller and the coupling, local rules and licensed people have the last word.'
export const canDrop = 'A lifted machine can drop: keep hands and fingers from under it.'
export const canFlood = 'A parted shaft that is free can slide out of its seal, and the boat floods.'

export const dangers = {
  'live-voltage': {
    title: 'Live voltage that is dangerous to touch',
    why: 'A battery cannot be switched off: its terminals, and all that is connected to them, stay live. The full voltage of the bank counts, as it is on charge. Where the job states no battery, the highest voltage that the controller accepts counts, and what the motor needs. Skin is wet in a bilge, so the limit for wet places applies: dry skin may touch up to 60 V DC.',
    from: 30,
    source: {
      basis: 'published',
      text: 'IEC 60598-1:2008, 8.2.3: in wet places, up to 30 V DC may be touched; IEC 60364-4-41 agrees (from memory)',
    },
    guard: 'Cover the terminals and use insulated tools. Leave work on live parts to a licensed person.',
  },
  'stored-charge': {
    title: 'Charge stored in the controller',
    why: 'The capacitors of a controller stay charged after it is switched off. Their energy is half the capacitance times the square of the voltage.',
    from: 0.2,
    source: { basis: 'from memory', text: 'UN GTR 20: less than 0.2 J is harmless (from memory)' },
    guard: `${isolateFirst} Then prove it dead.`,
  },
  'short-circuit': {
    title: 'Short-circuit current of the battery',
    why: 'A tool or a ring across the terminals draws an arc that melts metal and burns. No fuse is in that circuit.',
    from: 240,
    source: {
      basis: 'from memory',
      text: 'IEC 60950-1: from 240 VA a short circuit burns (from memory)',
    },
    guard: 'Take off rings and watches. Cover the terminals before you bring a tool near them.',
  },
  'turning-shaft': {
    title: 'Shaft that can turn',
    why: 'The motor or the water can turn the shaft while someone has a hand on it. A motor turned by the water generates voltage.',
    source: { basis: 'common practice', text: 'secured before work begins (common practice, no source)' },
    guard:
      'Secure the shaft with a clamp or straps forward of its seal, so that it can neither turn in the water nor slide aft.',
  },
  'heavy-machine': {
    title: 'Machine, propeller or shaft too heavy to lift by hand',
    why: 'A machine that drops or tips crushes what is under it. The weight of a motor or a gear that is not stated counts as too heavy. That of the shaft follows from its diameter and length.',
    from: 25,
    source: { basis: 'from memory', text: 'ISO 11228-1: 25 kg for one person (from memory)' },
    guard: `Use a jack or a hoist that is rated for the weight. ${keepClear}`,
  },
  'open-hull': {
    title: 'Opening in the hull',
    why: 'While the seal is open, the boat is only as watertight as what blocks the shaft log.',
    source: {
      basis: 'common practice',
      text: 'no opening below the waterline is safe (common practice, no source)',
    },
    guard: 'Block the shaft log before you open the seal, or have the boat lifted out. Keep a pump ready.',
  },
} as const satisfies Readonly<Record<string, DangerRow>>

export type Danger = keyof typeof dangers

/** From what figure on it counts, SI. */
export const dangerousFrom = (danger: Danger): number => {
  const row: DangerRow = dangers[danger]
  return row.from ?? 0
}
