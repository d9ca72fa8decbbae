const windowMs = 3 * 60 * 1000
const restartsAllowed = 3

/**
 * Whether a server that died at these times (ms, the latest included) is started again. A server that dies over and over
 * would otherwise restart for ever, unseen.
 */
export const mayRestart = (deaths: readonly number[], now: number): boolean =>
  deaths.filter((at) => now - at < windowMs).length <= restartsAllowed
