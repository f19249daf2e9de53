/**
 * Relative luminance of a colour, 0 (black) to 1 (white).
 *
 * @param hex `#rrggbb`
 * @source WCAG 2.2, definition of relative luminance, published
 */
export function luminanceOf(hex: string): number {
  const channel = (at: number): number => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
  }
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
}

/**
 * Contrast of two colours, 1 to 21.
 *
 * @source WCAG 2.2, definition of contrast ratio, published
 */
export function contrastOf(a: string, b: string): number {
  const [low = 0, high = 0] = [luminanceOf(a), luminanceOf(b)].sort((x, y) => x - y)
  return (high + 0.05) / (low + 0.05)
}
