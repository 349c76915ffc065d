#include <cube-root>

// Kinds of places, 0 outside … 1 inside: `rgb` as it comes into the step, `material` log2 R/B against grey in stops, and the numbers
// of the part in two vectors.
float foliagePlace(vec3 rgb, vec2 position, float material, vec3 a, vec3 b) {
  return 1.0 - smoothstep(a.x, a.y, material);
}

float skyPlace(vec3 rgb, vec2 position, float material, vec3 a, vec3 b) {
  return smoothstep(a.x, a.y, material);
}

float levelPlace(vec3 rgb, vec2 position, float material, vec3 a, vec3 b) {
  float ev = log2(max((rgb.r + rgb.g + rgb.b) / 3.0, b.z) / b.y);
  return smoothstep(a.x, a.y, ev) * (1.0 - smoothstep(a.z, b.x, ev));
}

float huePlace(vec3 rgb, vec2 position, float material, vec3 a, vec3 b) {
  vec3 lab = maskRootsToOklab * cubeRoot(maskToLms * rgb);
  float chroma = length(lab.yz);
  float coloured = smoothstep(0.5 * b.y, b.y, chroma / max(lab.x, b.z));
  return coloured * smoothstep(a.z, b.x, dot(lab.yz, a.xy) / max(chroma, 1e-9));
}

float radialPlace(vec3 rgb, vec2 position, float material, vec3 a, vec3 b) {
  return 1.0 - smoothstep(b.y, 1.0, length((position - a.xy) * vec2(a.z, b.x)));
}

float graduatedPlace(vec3 rgb, vec2 position, float material, vec3 a, vec3 b) {
  return 1.0 - smoothstep(0.0, 1.0, dot(position - a.xy, vec2(a.z, b.x)));
}
