// A tile of raw codes; sums of a few of them stay exact as floats.
uniform usampler2D codes;
uniform ivec2 codesOrigin;

float codeAt(ivec2 texel) {
  return float(texelFetch(codes, texel, 0).r);
}
