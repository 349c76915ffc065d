// A sensor without colour filters: every channel is the photosite itself. Needs a codes chunk.
uniform vec4 black;
uniform vec4 unit;

vec4 demosaic(ivec2 site) {
  int place = (site.x & 1) + 2 * (site.y & 1);
  return vec4((codeAt(site - codesOrigin) - black[place]) * unit[place]);
}
