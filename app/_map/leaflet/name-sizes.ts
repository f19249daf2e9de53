import type { MapSite } from '../map-types'

type Size = { readonly width: number; readonly height: number }

const NO_NAME: Size = { width: 0, height: 0 }

/**
 * How large the names of sites are, [px]. Each is measured once: to measure any, the browser must first lay out the whole
 * page as it is by then.
 */
export class NameSizes {
  readonly #sizes = new Map<string, Size>()

  /** @param face what is drawn of the site; its name has no size until it is drawn, nor while the map is not shown */
  sizeOf({ name, note, isMarked }: Pick<MapSite, 'name' | 'note' | 'isMarked'>, face: HTMLElement): Size {
    const key = `${name}\n${note ?? ''}\n${isMarked ?? false}`
    const known = this.#sizes.get(key)
    if (known) return known
    const element = face.querySelector<HTMLElement>('[data-name]')
    if (!element?.offsetWidth) return NO_NAME
    const size = { width: element.offsetWidth, height: element.offsetHeight }
    this.#sizes.set(key, size)
    return size
  }

  /** Names are drawn in another size from now on. */
  forget(): void {
    this.#sizes.clear()
  }
}
