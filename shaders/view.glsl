// The picture on the screen.
out vec4 colour;

void main() {
  vec2 sensor = sensorAt(gl_FragCoord.xy);
  vec4 camera = cameraAt(sensor);
  colour = vec4(runChain(camera.rgb, PixelFacts(camera.a, sensor / frameSize)), 1.0);
}
