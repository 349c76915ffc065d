// Encoded displayRgb 0…1 to whole codes 0…largest with triangular dither of ±1 code, from a hash of the pixel's place in the full frame.
uvec3 hashPixel(uvec2 place) {
  uvec3 v = uvec3(place, 0u) * 1664525u + 1013904223u;
  v.x += v.y * v.z;
  v.y += v.z * v.x;
  v.z += v.x * v.y;
  v ^= v >> 16u;
  v.x += v.y * v.z;
  v.y += v.z * v.x;
  v.z += v.x * v.y;
  return v;
}

vec3 quantise(vec3 rgb, uvec2 place, float largest) {
  uvec3 bits = hashPixel(place);
  vec3 noise = (vec3(bits >> 16u) - vec3(bits & 0xffffu)) / 65536.0;
  vec3 codes = clamp(floor(rgb * largest + 0.5 + noise), 0.0, largest);
  codes = mix(codes, vec3(0.0), lessThanEqual(rgb, vec3(0.0)));
  return mix(codes, vec3(largest), greaterThanEqual(rgb, vec3(1.0)));
}
