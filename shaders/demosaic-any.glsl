// Any colour filter array: green by kernels, then red and blue as green plus kernels over the colour differences.
// `taps` holds the kernels, three rows (green, red, blue) to each place in the array: x and y of a tap and its weight; the
// fourth number of a row's first texel is its count. Needs a codes chunk with normalised photosites.
uniform sampler2D taps;
uniform sampler2D arrayColours;
uniform vec3 gains;

int placeInArray(ivec2 site) {
  ivec2 period = textureSize(arrayColours, 0);
  ivec2 place = ((site % period) + period) % period;
  return place.y * period.x + place.x;
}

int colourAt(int place) {
  int columns = textureSize(arrayColours, 0).x;
  return int(texelFetch(arrayColours, ivec2(place % columns, place / columns), 0).r);
}

#ifdef MIXED_FETCHED
uniform sampler2D mixed;

vec2 mixedAt(ivec2 site) {
  return texelFetch(mixed, site - codesOrigin, 0).rg;
}
#else
// Gained green at a site, and how far the gained photosite lies from it.
vec2 mixedAt(ivec2 site) {
  ivec2 p = site - codesOrigin;
  int place = placeInArray(site);
  int colour = colourAt(place);
  float value = codeAt(p);
  float green = colour == 1 ? value : 0.0;
  int count = colour == 1 ? 0 : int(texelFetch(taps, ivec2(0, 3 * place), 0).a);
  for (int i = 0; i < count; i++) {
    vec4 tap = texelFetch(taps, ivec2(i, 3 * place), 0);
    green += tap.z * codeAt(p + ivec2(tap.xy));
  }
  green *= gains.g;
  return vec2(green, gains[colour] * value - green);
}
#endif

float differenceAt(ivec2 site, int row) {
  float sum = 0.0;
  int count = int(texelFetch(taps, ivec2(0, row), 0).a);
  for (int i = 0; i < count; i++) {
    vec4 tap = texelFetch(taps, ivec2(i, row), 0);
    sum += tap.z * mixedAt(site + ivec2(tap.xy)).g;
  }
  return sum;
}

vec4 demosaic(ivec2 site) {
  ivec2 p = site - codesOrigin;
  int place = placeInArray(site);
  float green = mixedAt(site).r;
  vec3 rgb = vec3(green + differenceAt(site, 3 * place + 1), green, green + differenceAt(site, 3 * place + 2)) / gains;
  rgb[colourAt(place)] = codeAt(p);
  float peak = -1.0;
  for (int y = -1; y <= 1; y++) {
    for (int x = -1; x <= 1; x++) peak = max(peak, codeAt(p + ivec2(x, y)));
  }
  return vec4(rgb, peak);
}
