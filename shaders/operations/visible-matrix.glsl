// The camera's matrix for visible light, blended in.
vec3 visibleMatrix(vec3 rgb, VisibleMatrixCoefficients k, PixelFacts pixel) {
  return k.matrix * rgb;
}
