declare const names: unique symbol

/** Stands for a block in a result, for a result is data and holds no block: where it is by kinds and names, from the top of its file down. */
export type BlockId = string & { readonly [names]: 'block' }

/** Parts an id: no kind and no name has a line end in it. */
export const between = '\n'
