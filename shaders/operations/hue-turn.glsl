#include <cube-root>

// Rotates (a, b) of OKLab, folded into one matrix on the cube roots of the cone responses.
vec3 hueTurn(vec3 rgb, HueTurnCoefficients k, PixelFacts pixel) {
  vec3 roots = k.turn * cubeRoot(k.toLms * rgb);
  return k.fromLms * (roots * roots * roots);
}
