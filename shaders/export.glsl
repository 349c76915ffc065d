// Finished codes for a file: quantised by the sensor pixel's place, `codeScale` brings them to the range of the target.
uniform float largestCode;
uniform float codeScale;
out vec4 colour;

void main() {
  vec2 sensor = sensorAt(gl_FragCoord.xy);
  vec4 camera = cameraAt(sensor);
  vec3 rgb = runChain(camera.rgb, PixelFacts(camera.a, sensor / frameSize));
  colour = vec4(quantise(rgb, uvec2(sensor), largestCode) * codeScale, 1.0);
}
