// A tile of photosites that the processor has normalised, for patterns of levels that do not fit into 2×2.
uniform sampler2D codes;
uniform ivec2 codesOrigin;

float codeAt(ivec2 texel) {
  return texelFetch(codes, texel, 0).r;
}
