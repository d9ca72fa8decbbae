/** The last plan that was made, and why there is no newer one where it may no longer hold. */
export interface PlanPage {
  readonly plan?: { readonly text: string; readonly made: Date } | undefined
  readonly outdated?: string | undefined
}

/** By the clock of this machine: `2026-03-04 09:05:00`. */
function timeOf(date: Date): string {
  const two = (n: number) => String(n).padStart(2, '0')
  const day = [date.getFullYear(), two(date.getMonth() + 1), two(date.getDate())].join('-')
  return `${day} ${[date.getHours(), date.getMinutes(), date.getSeconds()].map(two).join(':')}`
}

/** What a plan view shows: a plan that may no longer hold says so in its first line. */
export function pageText({ plan, outdated }: PlanPage): string {
  if (!plan) return `${outdated ? `No plan: ${outdated}` : 'Making the plan…'}\n`
  if (outdated === undefined) return `${plan.text}\n`
  return `Out of date: this plan was made at ${timeOf(plan.made)}. ${outdated}\n\n${plan.text}\n`
}
