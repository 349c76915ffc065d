// Reading sampled data without the hardware's filters, whose few weight bits would show in 16-bit files.

// Per-channel linear reading of a one-dimensional RGB table over 0…1; beyond it the ends hold.
vec3 tableAt(highp sampler2D table, vec3 x) {
  int last = textureSize(table, 0).x - 1;
  vec3 place = clamp(x, 0.0, 1.0) * float(last);
  ivec3 low = min(ivec3(place), last - 1);
  vec3 share = place - vec3(low);
  vec3 from = vec3(texelFetch(table, ivec2(low.r, 0), 0).r, texelFetch(table, ivec2(low.g, 0), 0).g, texelFetch(table, ivec2(low.b, 0), 0).b);
  vec3 to = vec3(texelFetch(table, ivec2(low.r + 1, 0), 0).r, texelFetch(table, ivec2(low.g + 1, 0), 0).g, texelFetch(table, ivec2(low.b + 1, 0), 0).b);
  return from + share * (to - from);
}

// Tetrahedral reading of a cube of RGB over 0…1, red fastest: walk from the lower corner along the largest share first.
vec3 cubeAt(highp sampler3D table, vec3 x) {
  int last = textureSize(table, 0).x - 1;
  vec3 place = clamp(x, 0.0, 1.0) * float(last);
  ivec3 low = min(ivec3(place), last - 1);
  vec3 share = place - vec3(low);
  ivec3 first = share.r >= share.g
    ? (share.r >= share.b ? ivec3(1, 0, 0) : ivec3(0, 0, 1))
    : (share.g >= share.b ? ivec3(0, 1, 0) : ivec3(0, 0, 1));
  ivec3 leastAway = share.r < share.g
    ? (share.r < share.b ? ivec3(0, 1, 1) : ivec3(1, 1, 0))
    : (share.g < share.b ? ivec3(1, 0, 1) : ivec3(1, 1, 0));
  float most = max(share.r, max(share.g, share.b));
  float least = min(share.r, min(share.g, share.b));
  float middle = share.r + share.g + share.b - most - least;
  vec3 corner = texelFetch(table, low, 0).rgb;
  vec3 afterFirst = texelFetch(table, low + first, 0).rgb;
  vec3 afterSecond = texelFetch(table, low + leastAway, 0).rgb;
  vec3 far = texelFetch(table, low + 1, 0).rgb;
  return corner * (1.0 - most) + afterFirst * (most - middle) + afterSecond * (middle - least) + far * least;
}

// Bilinear reading of a plane laid over the frame, pixel centres half a pixel inside its edges.
float planeAt(highp sampler2D plane, vec2 position) {
  ivec2 last = textureSize(plane, 0) - 1;
  vec2 place = clamp(position * vec2(last + 1) - 0.5, vec2(0.0), vec2(last));
  ivec2 low = ivec2(place);
  ivec2 high = min(low + 1, last);
  vec2 share = place - vec2(low);
  float top = mix(texelFetch(plane, low, 0).r, texelFetch(plane, ivec2(high.x, low.y), 0).r, share.x);
  float bottom = mix(texelFetch(plane, ivec2(low.x, high.y), 0).r, texelFetch(plane, high, 0).r, share.x);
  return mix(top, bottom, share.y);
}
