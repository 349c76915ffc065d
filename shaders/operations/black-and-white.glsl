#include <cube-root>

// A weighted grey, then tones for shadows and highlights at its OKLab lightness, which for a grey is the cube root.
vec3 blackAndWhite(vec3 rgb, BlackAndWhiteCoefficients k, PixelFacts pixel) {
  vec3 grey = vec3(dot(k.shares, rgb));
  if (k.toned == 0) return grey;
  float light = cubeRoot(grey).r;
  float inside = clamp(light, 0.0, 1.0);
  float away = (1.0 - inside) * (1.0 - inside);
  float reach = k.whiteToned == 1 ? 1.0 - away * away : 4.0 * inside * (1.0 - inside);
  vec2 tone = reach * mix(k.shadowTone, k.highlightTone, smoothstep(k.turnFrom, k.turnTo, light));
  vec3 roots = light + k.toRoots * vec3(0.0, tone);
  return k.fromLms * (roots * roots * roots);
}
