// Gains of shadows, midtones and highlights by weights that are logistic in the log of the level; the level is kept.
vec3 tonalBalance(vec3 rgb, TonalBalanceCoefficients k, PixelFacts pixel) {
  float level = max((rgb.r + rgb.g + rgb.b) / 3.0, 0.0);
  float leaving = level / k.shadowsEnd;
  float entering = level / k.highlightsBegin;
  float shadow = 1.0 / (1.0 + leaving * leaving);
  float highlight = entering * entering / (1.0 + entering * entering);
  vec3 gained = rgb * exp2(shadow * k.shadows + (1.0 - shadow - highlight) * k.midtones + highlight * k.highlights);
  float after = dot(max(gained, 0.0), vec3(1.0));
  return after > 0.0 ? gained * (dot(max(rgb, 0.0), vec3(1.0)) / after) : gained;
}
