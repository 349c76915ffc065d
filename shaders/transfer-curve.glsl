// Encoding curve of an output space: a line below the threshold, a scaled power above. Linear 0…1 to encoded 0…1.
vec3 encodeCurve(vec3 linear, float slope, float threshold, float exponent, float scale) {
  vec3 power = scale * pow(max(linear, threshold), vec3(exponent)) - (scale - 1.0);
  return mix(power, slope * linear, lessThan(linear, vec3(threshold)));
}

// Encoded to linear: the inverse.
vec3 decodeCurve(vec3 encoded, float slope, float threshold, float exponent, float scale) {
  float knee = slope * threshold;
  vec3 power = pow((max(encoded, knee) + scale - 1.0) / scale, vec3(1.0 / exponent));
  return mix(power, encoded / slope, lessThan(encoded, vec3(knee)));
}
