type Slice = { offset: number; length: number }

/** A file on this device as the GeoTIFF reader asks for it: piece by piece, so that a large one is never in memory whole. */
export class BlobSource {
  constructor(private readonly blob: Blob) {}

  get fileSize(): number {
    return this.blob.size
  }

  /** @throws RangeError when the file ends before the piece does and holds nothing of it */
  async fetchSlice({ offset, length }: Slice): Promise<Slice & { data: ArrayBuffer }> {
    if (offset >= this.blob.size) throw new RangeError(`the file ends at ${this.blob.size}, before ${offset}`)
    return { offset, length, data: await this.blob.slice(offset, offset + length).arrayBuffer() }
  }

  async fetch(slices: Slice[]): Promise<ArrayBuffer[]> {
    return Promise.all(slices.map(async (slice) => (await this.fetchSlice(slice)).data))
  }

  async close(): Promise<void> {}
}
