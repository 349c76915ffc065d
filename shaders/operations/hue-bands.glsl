#include <cube-root>
#include <angle>

// Turn, strength and light of the two bands beside a pixel's hue, mixed in shares that sum to one; near grey nothing changes.
vec3 hueBands(vec3 rgb, HueBandsCoefficients k, PixelFacts pixel) {
  vec3 lab = k.toOklab * cubeRoot(k.toLms * rgb);
  float chroma = length(lab.yz);
  float share = lab.x > 0.0 ? smoothstep(k.greyUntil, k.colourFrom, chroma / lab.x) : 0.0;
  if (!(share > 0.0)) return rgb;
  float angle = angleOf(lab.yz);
  float hue = angle < 0.0 ? angle + 6.28318531 : angle;
  int at = 7;
  for (int i = 0; i < 8; i++) if (k.hues[i] <= hue) at = i;
  int next = (at + 1) % 8;
  float behind = hue - k.hues[at] + (hue < k.hues[at] ? 6.28318531 : 0.0);
  float toNext = smoothstep(0.0, k.gaps[at], behind);
  vec2 direction = directionOf(share * mix(k.turns[at], k.turns[next], toNext));
  float gain = exp2(share * mix(k.strengths[at], k.strengths[next], toNext));
  float light = exp2(share * mix(k.lights[at], k.lights[next], toNext));
  vec2 turned = gain * vec2(direction.x * lab.y - direction.y * lab.z, direction.y * lab.y + direction.x * lab.z);
  vec3 roots = k.toRoots * vec3(lab.x, turned);
  return k.fromLms * (light * roots * roots * roots);
}
