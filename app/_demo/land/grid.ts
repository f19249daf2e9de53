/** Square cells of ground, row by row. */
export type Grid = { readonly columns: number; readonly rows: number; readonly cell_m: number }
