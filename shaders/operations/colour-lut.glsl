#include <acescct>
#include <table>
#include <transfer-curve>

vec3 encodeForTable(vec3 linear, int isLog, vec4 curve) {
  return isLog != 0 ? encodeAcescct(linear) : encodeCurve(linear, curve.x, curve.y, curve.z, curve.w);
}

vec3 decodeFromTable(vec3 coded, int isLog, vec4 curve) {
  return isLog != 0 ? decodeAcescct(coded) : decodeCurve(coded, curve.x, curve.y, curve.z, curve.w);
}

// Brighter than the table: read at its end along the colour's own ray. Below it: added back untouched.
vec3 colourLut(vec3 rgb, ColourLutCoefficients k, PixelFacts pixel, highp sampler3D cube, highp sampler2D line) {
  if (k.acts == 0) return rgb;
  vec3 linear = k.toTable * rgb;
  float scale = min(max(max(max(linear.r, linear.g), linear.b) / k.highest, 1.0), k.limit);
  vec3 held = clamp(linear / scale, k.lowest, k.highest);
  vec3 below = linear / scale - held;
  vec3 read = cubeAt(cube, tableAt(line, encodeForTable(held, k.takesLog, k.takesCurve)));
  vec3 given = k.fromGiven * decodeFromTable(read, k.givesLog, k.givesCurve);
  return scale * (given + k.fromTable * below);
}
