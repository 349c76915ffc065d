// Infrared taken off red and green and put where it was asked for: one matrix.
vec3 infraredSplit(vec3 rgb, InfraredSplitCoefficients k, PixelFacts pixel) {
  return k.split * rgb;
}
