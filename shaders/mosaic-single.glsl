// Source is a tile of raw codes of a sensor without colour filters: every channel is the photosite itself.
uniform usampler2D codes;
uniform ivec2 codesOrigin;
uniform vec4 black;
uniform vec4 unit;

float normalisedAt(ivec2 site) {
  int place = (site.x & 1) + 2 * (site.y & 1);
  return (float(texelFetch(codes, site - codesOrigin, 0).r) - black[place]) * unit[place];
}

vec4 demosaic(ivec2 site) {
  float peak = -1.0;
  for (int y = -1; y <= 1; y++) {
    for (int x = -1; x <= 1; x++) peak = max(peak, normalisedAt(site + ivec2(x, y)));
  }
  return vec4(vec3(normalisedAt(site)), peak);
}
