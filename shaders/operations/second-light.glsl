#include <table>

// Balanced workingRgb turned from the main neutral to that of the shade by the share of shade; clipped pixels stay grey.
vec3 secondLight(vec3 rgb, SecondLightCoefficients k, PixelFacts pixel, highp sampler2D shade) {
  float share = planeAt(shade, pixel.position) * (1.0 - smoothstep(k.guardFrom, k.guardTo, pixel.peak));
  return rgb * exp2(share * k.shiftStops);
}
