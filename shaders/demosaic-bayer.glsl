// A 2×2 mosaic, interpolated after Malvar, He & Cutler, "High-quality linear interpolation
// for demosaicing of Bayer-patterned color images", ICASSP 2004. All taps of one distance share a place in the 2×2 pattern,
// so raw codes are summed first and levels are taken off six sums instead of thirteen codes. Needs a codes chunk.
uniform ivec2 redPlace;
uniform vec4 black;
uniform vec4 unit;
uniform vec3 gains;

float normalised(float sum, float count, int place) {
  return (sum - count * black[place]) * unit[place];
}

// Ungained `cameraRgb` and the largest photosite of the 3×3 around `site`; channels are equal by `gains` while they are mixed.
vec4 demosaic(ivec2 site) {
  ivec2 p = site - codesOrigin;
  float centre = codeAt(p);
  float west = codeAt(p - ivec2(1, 0));
  float east = codeAt(p + ivec2(1, 0));
  float north = codeAt(p - ivec2(0, 1));
  float south = codeAt(p + ivec2(0, 1));
  float northWest = codeAt(p - ivec2(1, 1));
  float northEast = codeAt(p + ivec2(1, -1));
  float southWest = codeAt(p + ivec2(-1, 1));
  float southEast = codeAt(p + ivec2(1, 1));
  float farAcross = codeAt(p - ivec2(2, 0)) + codeAt(p + ivec2(2, 0));
  float farDown = codeAt(p - ivec2(0, 2)) + codeAt(p + ivec2(0, 2));

  int own = (site.x & 1) + 2 * (site.y & 1);
  int beside = own ^ 1;
  int above = own ^ 2;
  int diagonal = own ^ 3;
  float c = normalised(centre, 1.0, own);
  float across = normalised(west + east, 2.0, beside);
  float down = normalised(north + south, 2.0, above);
  float corners = normalised(northWest + northEast + southWest + southEast, 4.0, diagonal);
  float across2 = normalised(farAcross, 2.0, own);
  float down2 = normalised(farDown, 2.0, own);

  float peak = max(
    max(c, normalised(max(west, east), 1.0, beside)),
    max(normalised(max(north, south), 1.0, above),
        normalised(max(max(northWest, northEast), max(southWest, southEast)), 1.0, diagonal)));

  bool redColumn = (site.x & 1) == redPlace.x;
  bool redRow = (site.y & 1) == redPlace.y;
  if (redColumn == redRow) {
    float ownGain = redRow ? gains.r : gains.b;
    float otherGain = redRow ? gains.b : gains.r;
    float green = (2.0 * (across + down) + ownGain / gains.g * (4.0 * c - across2 - down2)) / 8.0;
    float other = (2.0 * corners + ownGain / otherGain * (6.0 * c - 1.5 * (across2 + down2))) / 8.0;
    return redRow ? vec4(c, green, other, peak) : vec4(other, green, c, peak);
  }
  float acrossGain = redRow ? gains.r : gains.b;
  float downGain = redRow ? gains.b : gains.r;
  float fromAcross = (4.0 * across + gains.g / acrossGain * (5.0 * c - corners - across2 + 0.5 * down2)) / 8.0;
  float fromDown = (4.0 * down + gains.g / downGain * (5.0 * c - corners - down2 + 0.5 * across2)) / 8.0;
  return redRow ? vec4(fromAcross, c, fromDown, peak) : vec4(fromDown, c, fromAcross, peak);
}
