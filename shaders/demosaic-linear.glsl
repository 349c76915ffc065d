// Three linear codes per pixel, side by side in a row; the peak is the pixel's own largest channel. Needs a codes chunk.
uniform vec3 black;
uniform vec3 unit;

vec4 demosaic(ivec2 site) {
  ivec2 p = (site - codesOrigin) * ivec2(3, 1);
  vec3 raw = vec3(codeAt(p), codeAt(p + ivec2(1, 0)), codeAt(p + ivec2(2, 0)));
  vec3 rgb = (raw - black) * unit;
  return vec4(rgb, max(rgb.r, max(rgb.g, rgb.b)));
}
