// The source is the tile of codes itself: the nearest photosite, interpolated at every draw.
vec4 cameraAt(vec2 sensor) {
  return demosaic(ivec2(floor(sensor)));
}
