// Source is a tile of three linear codes per pixel, side by side in a row.
uniform usampler2D codes;
uniform ivec2 codesOrigin;
uniform vec3 black;
uniform vec3 unit;

vec4 demosaic(ivec2 site) {
  ivec2 p = (site - codesOrigin) * ivec2(3, 1);
  uvec3 raw = uvec3(
    texelFetch(codes, p, 0).r, texelFetch(codes, p + ivec2(1, 0), 0).r, texelFetch(codes, p + ivec2(2, 0), 0).r
  );
  vec3 rgb = (vec3(raw) - black) * unit;
  return vec4(rgb, max(rgb.r, max(rgb.g, rgb.b)));
}
