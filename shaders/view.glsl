// The picture on the screen, where asked for with stripes over what clips: one slant for each channel, so that no colour is
// needed to tell them apart, and dots over what is wholly black.
uniform int clipping;
out vec4 colour;

// Largest photosite that counts as clipped, and the mean from which another channel of the same place counts too: the source
// knows only one peak for all channels (both our choice).
const float clippedPeak = 0.998;
const float clippedMean = 0.97;
// Half a code of 8 bits.
const float halfCode = 0.5 / 255.0;
// Distance of stripes and dots in target pixels (our choice).
const float period = 9.0;

// A bright line beside a dark one, legible on anything; below 0 the picture stays.
float stripeAt(float along) {
  float place = mod(along, period);
  return place < 2.0 ? 1.0 : place < 4.0 ? 0.0 : -1.0;
}

vec3 marked(vec3 shown, bvec3 clipped, bool black) {
  vec2 at = gl_FragCoord.xy;
  float mark = -1.0;
  if (clipped.r) mark = max(mark, stripeAt((at.x + at.y) * 0.70711));
  if (clipped.g) mark = max(mark, stripeAt((at.x - at.y) * 0.70711));
  if (clipped.b) mark = max(mark, stripeAt(at.y));
  if (black && length(mod(at, period) - 0.5 * period) < 2.0) mark = 1.0;
  return mark < 0.0 ? shown : vec3(mark);
}

vec3 markClipping(vec3 shown, vec4 camera) {
  if (clipping == 0) return shown;
  if (clipping == 2) {
    return marked(shown, greaterThanEqual(shown, vec3(1.0 - halfCode)), all(lessThanEqual(shown, vec3(halfCode))));
  }
  if (camera.a < clippedPeak) return shown;
  float most = max(camera.r, max(camera.g, camera.b));
  return marked(shown, greaterThanEqual(camera.rgb, vec3(min(most, clippedMean))), false);
}

void main() {
  vec2 sensor = sensorAt(gl_FragCoord.xy);
  vec4 camera = cameraAt(sensor);
  vec3 shown = runChain(camera.rgb, PixelFacts(camera.a, sensor / frameSize));
  colour = vec4(markClipping(shown, camera), 1.0);
}
