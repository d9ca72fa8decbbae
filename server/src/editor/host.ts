/** What the server takes from where it runs: Node, or a browser. */
export interface Host {
  /** Text of a file inside the folder `root`; undefined when there is none, or when it turns out to lie outside. Both are URIs. */
  readonly read: (uri: string, root: string) => string | undefined
  /** Today, `YYYY-MM-DD`. */
  readonly today: () => string
  /** Where the pages of the checks stand, ending in `/`, when they stand anywhere. */
  readonly docs?: string
}
