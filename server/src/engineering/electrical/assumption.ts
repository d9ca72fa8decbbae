/** What a result takes for granted because it was not given. The words for it are for whoever shows it. Temperatures in °C. */
export type Assumption =
  | { readonly type: 'ambient'; readonly ambientC: number }
  /** The ambient that is stated is cooler than the one of the place, which counts. */
  | { readonly type: 'cooler-not-counted'; readonly ambientC: number }
  /** Insulation between two columns of a table is read in the lower. */
  | { readonly type: 'lower-column'; readonly insulationC: number; readonly columnC: number }
  | { readonly type: 'between-rows' | 'above-rows' | 'below-rows' }
  /** A table from memory, with no other to hold it against. */
  | { readonly type: 'table-alone'; readonly table: string }
  /** A table from memory that is not lower than the confirmed one. */
  | { readonly type: 'table-not-lower'; readonly table: string }
  | { readonly type: 'table-lower'; readonly table: string; readonly than: string }
  | { readonly type: 'table-from-memory'; readonly table: string }
  | { readonly type: 'bundling-us' | 'pair-not-derated' }
  | { readonly type: 'strands-class-5' | 'copper-tinned' | 'stranding-2-percent' }
  /** IEC 60228 has no row for a section of so many mm². */
  | { readonly type: 'no-row'; readonly mm2: number }
  | { readonly type: 'insulation-limit'; readonly insulationC: number }
  | { readonly type: 'highest-motor-voltage' | 'space-vectors' }
