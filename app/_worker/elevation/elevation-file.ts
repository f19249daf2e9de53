/** A file that somebody chose as heights: a GeoTIFF, an SRTM tile, or either packed as .zip. */
export type ElevationFile = { readonly name: string; readonly blob: Blob }
