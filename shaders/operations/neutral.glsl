// Gains to balanced workingRgb; a pixel whose largest raw channel nears saturation fades to (M, M, M), M its largest gained channel.
vec3 neutral(vec3 rgb, NeutralCoefficients k, PixelFacts pixel) {
  vec3 gained = rgb * k.gains;
  float grey = k.guarded == 1 ? smoothstep(k.guardFrom, k.guardTo, pixel.peak) : 0.0;
  return gained * (1.0 - grey) + grey * max(gained.r, max(gained.g, gained.b));
}
