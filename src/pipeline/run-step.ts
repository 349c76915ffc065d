// One described step on one pixel, for everything that runs on the processor: the operation, and where it has a mask, as much of
// it as the mask lets through.
import type { Pixel } from '../operations/define.ts'
import { maskWeight } from '../operations/masks/mask.ts'
import type { DescribedStep } from './description.ts'

/** In place; allocates nothing. */
export function runStep({ operation, coefficients, tables, mask }: DescribedStep, pixel: Pixel): void {
  if (!mask) {
    operation.apply(pixel, coefficients, tables)
    return
  }
  const weight = maskWeight(mask, pixel)
  const red = pixel[0]
  const green = pixel[1]
  const blue = pixel[2]
  operation.apply(pixel, coefficients, tables)
  pixel[0] = red * (1 - weight) + pixel[0] * weight
  pixel[1] = green * (1 - weight) + pixel[1] * weight
  pixel[2] = blue * (1 - weight) + pixel[2] * weight
}
