#include <table>
#include <transfer-curve>

// Black and white point, then a curve read from a table over the sRGB-encoded level; beyond white it goes on straight. The
// factor of each channel comes from the level of all, or from the channel itself.
vec3 toneCurve(vec3 rgb, ToneCurveCoefficients k, PixelFacts pixel, highp sampler2D rise) {
  if (k.acts == 0) return rgb;
  vec3 held = max(k.perChannel == 1 ? rgb : vec3((rgb.r + rgb.g + rgb.b) / 3.0), k.leastLevel);
  vec3 level = (held - k.black) * k.unit;
  vec3 place = encodeCurve(clamp(level, 0.0, 1.0), k.slope, k.threshold, k.exponent, k.scale);
  vec3 risen = tableAt(rise, place) + k.slopeAtWhite * max(level - 1.0, 0.0);
  return k.base + rgb * (risen / held);
}
