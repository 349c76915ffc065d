#include <cube-root>

// Chroma of OKLab times one factor; growth bends off where the chroma noise of this level would pass what is allowed.
vec3 colourStrength(vec3 rgb, ColourStrengthCoefficients k, PixelFacts pixel) {
  vec3 roots = cubeRoot(k.toLms * rgb);
  float light = dot(k.rootsToLightness, roots);
  float gain = k.strength;
  if (gain > 1.0) {
    float growth = gain - 1.0;
    float level = max(light * light * light, k.darkest);
    float room = max(k.allowed / sqrt(k.photon / level + k.read / (level * level)), 1.0) - 1.0;
    gain = 1.0 + growth * room / max(length(vec2(growth, room)), 1e-9);
  }
  roots = light + gain * (roots - light);
  return k.fromLms * (roots * roots * roots);
}
