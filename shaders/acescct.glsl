// ACEScct (Academy S-2016-001): linear light to the curve and back; a line below the break, so negative values survive.
vec3 encodeAcescct(vec3 linear) {
  vec3 curve = (log2(max(linear, 0.0078125)) + 9.72) / 17.52;
  return mix(curve, 10.5402377416545 * linear + 0.0729055341958355, lessThanEqual(linear, vec3(0.0078125)));
}

vec3 decodeAcescct(vec3 coded) {
  vec3 curve = exp2(coded * 17.52 - 9.72);
  return mix(curve, (coded - 0.0729055341958355) / 10.5402377416545, lessThanEqual(coded, vec3(0.155251141552511)));
}
