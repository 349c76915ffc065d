#include <cube-root>
#include <transfer-curve>

bool isWithinSpace(float lowest, float highest, vec3 rgb) {
  return all(greaterThanEqual(rgb, vec3(lowest))) && all(lessThanEqual(rgb, vec3(highest)));
}

// The most chroma between grey of lightness L and the colour of these cone roots that the space holds; each channel is a cubic in the share t.
// Channels may fall below 0 by `slack` of the grey level and are then raised to 0, and above 1 up to the ceiling.
vec3 reduceChroma(mat3 fromLms, float slack, float ceiling, float light, vec3 roots) {
  vec3 away = roots - light;
  vec3 c1 = fromLms * (3.0 * light * light * away);
  vec3 c2 = fromLms * (3.0 * light * away * away);
  vec3 c3 = fromLms * (away * away * away);
  float grey = light * light * light;
  float lowest = -slack * grey;
  float high = 1.0;
  float low = isWithinSpace(lowest, ceiling, grey + (c1 + (c2 + c3))) ? 1.0 : 0.0;
  for (int i = 0; low < high && i < 22; i++) {
    float middle = 0.5 * (low + high);
    if (isWithinSpace(lowest, ceiling, grey + middle * (c1 + middle * (c2 + middle * c3)))) low = middle;
    else high = middle;
  }
  return clamp(grey + low * (c1 + low * (c2 + low * c3)), 0.0, 1.0);
}

// Linear workingRgb to encoded displayRgb 0…1: chroma reduced into the space at constant lightness and hue, then the curve.
vec3 outputTransform(vec3 rgb, OutputTransformCoefficients k, PixelFacts pixel) {
  vec3 held = clamp(mix(rgb, vec3(0.0), isnan(rgb)), -65504.0, 65504.0);
  vec3 linear = k.toSpace * held;
  if (!isWithinSpace(0.0, 1.0, linear)) {
    vec3 roots = cubeRoot(k.toLms * held);
    float light = dot(k.rootsToLightness, roots);
    if (light > 0.0 && light < 1.0) linear = reduceChroma(k.fromLms, k.slack, k.ceiling, light, roots);
    else linear = vec3(light <= 0.0 ? 0.0 : 1.0);
  }
  return encodeCurve(linear, k.slope, k.threshold, k.exponent, k.scale);
}
