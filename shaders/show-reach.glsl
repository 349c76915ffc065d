// Where a step acts, laid over the finished picture: untouched places stay as they are, the others fade to an even light grey under
// a fine rule, so that the veil is told from pale parts of the picture by its pattern and not by a colour. `displayRgb` in and out.
vec3 showReach(vec3 rgb, float reach) {
  float light = dot(rgb, vec3(0.3, 0.6, 0.1));
  float rule = step(0.75, fract((gl_FragCoord.x + gl_FragCoord.y) / 10.0));
  return mix(rgb, vec3(0.66 + 0.2 * (light - 0.5) - 0.14 * rule), 0.9 * clamp(reach, 0.0, 1.0));
}
