type Numbers = Float64Array<ArrayBuffer> | Int32Array<ArrayBuffer> | Uint32Array<ArrayBuffer>

/** A typed array that doubles when full: numbers of unknown count without a boxed array. */
class GrowingArray<T extends Numbers> {
  length = 0
  private values: T

  constructor(private readonly make: (length: number) => T) {
    this.values = make(1024)
  }

  push(value: number): void {
    if (this.length === this.values.length) {
      const larger = this.make(this.values.length * 2)
      larger.set(this.values)
      this.values = larger
    }
    this.values[this.length++] = value
  }

  /** The numbers pushed so far, in an array of just that length. */
  toArray(): T {
    const exact = this.make(this.length)
    exact.set(this.values.subarray(0, this.length))
    return exact
  }
}

export const growingFloat64 = () => new GrowingArray((length) => new Float64Array(length))
export const growingInt32 = () => new GrowingArray((length) => new Int32Array(length))
export const growingUint32 = () => new GrowingArray((length) => new Uint32Array(length))
