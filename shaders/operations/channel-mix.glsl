// Each channel becomes a weighted sum of the three.
vec3 channelMix(vec3 rgb, ChannelMixCoefficients k, PixelFacts pixel) {
  return k.mix * rgb;
}
