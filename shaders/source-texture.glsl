// The source is a texture that holds `cameraRgb` and peak: the overview, or a demosaiced tile.
uniform sampler2D source;
uniform vec2 sourceOrigin;
uniform float sourceScale;
uniform float sourceLevel;
uniform bool sourceNearest;

// `sourceOrigin` is the texture's corner on the sensor, `sourceScale` sensor pixels per texel.
vec4 cameraAt(vec2 sensor) {
  vec2 texel = (sensor - sourceOrigin) / sourceScale;
  ivec2 last = textureSize(source, 0) - 1;
  if (sourceNearest) return texelFetch(source, clamp(ivec2(floor(texel)), ivec2(0), last), 0);
  return textureLod(source, texel / vec2(last + 1), sourceLevel);
}
