// The device pixels that an element spans. Where the ratio to CSS pixels is no whole number only the browser knows how it rounds,
// and a canvas that has one more or fewer is resampled as a whole.

interface DevicePixels {
  readonly width: number
  readonly height: number
}

/** Tells of every change of the element's size; `now` is its size in device pixels. */
export interface DevicePixelsOf {
  now(): DevicePixels
  stop(): void
}

export function followDevicePixels(element: HTMLElement, onChange: () => void): DevicePixelsOf {
  let told: DevicePixels | null = null
  const observer = new ResizeObserver(([entry]) => {
    const box = entry.devicePixelContentBoxSize?.[0]
    told = box ? { width: box.inlineSize, height: box.blockSize } : null
    onChange()
  })
  const isTold = 'devicePixelContentBoxSize' in ResizeObserverEntry.prototype
  observer.observe(element, { box: isTold ? 'device-pixel-content-box' : 'content-box' })
  return {
    now() {
      const { width, height } = element.getBoundingClientRect()
      const reckoned = { width: Math.round(width * devicePixelRatio), height: Math.round(height * devicePixelRatio) }
      // What was told holds until the next layout; what is reckoned is off by a pixel at most.
      const holds = told && Math.abs(told.width - reckoned.width) <= 1 && Math.abs(told.height - reckoned.height) <= 1
      return holds ? told! : reckoned
    },
    stop: () => observer.disconnect(),
  }
}
