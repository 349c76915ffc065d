// Packs strips on a thread of its own: several streams of compression in one thread run no faster than one.
import { expose, transfer } from 'comlink'
import { packStrip, type PackStrip } from './pack-strip.ts'

const packAndHandOver: PackStrip = async (samples, samplesPerRow) => {
  const packed = await packStrip(samples, samplesPerRow)
  return transfer(packed, [packed.buffer])
}

expose(packAndHandOver)
