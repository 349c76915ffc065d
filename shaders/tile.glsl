// Demosaiced tile for the view. Where the target is smaller than the sensor, a texel is the mean of `2^level` squared pixels
// and carries the largest peak among them.
uniform int level;
out vec4 colour;

void main() {
  int side = 1 << level;
  ivec2 first = ivec2(floor(sensorAt(gl_FragCoord.xy - 0.5)));
  vec3 sum = vec3(0.0);
  float peak = -1.0;
  for (int y = 0; y < side; y++) {
    for (int x = 0; x < side; x++) {
      vec4 camera = demosaic(first + ivec2(x, y));
      sum += camera.rgb;
      peak = max(peak, camera.a);
    }
  }
  colour = vec4(sum / float(side * side), peak);
}
