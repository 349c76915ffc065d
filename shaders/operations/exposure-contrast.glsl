// One factor per pixel: exposure, a power of the channel mean about the pivot, and a shoulder on the largest channel.
vec3 exposureContrast(vec3 rgb, ExposureContrastCoefficients k, PixelFacts pixel) {
  float mean = k.exposureGain * (rgb.r + rgb.g + rgb.b) / 3.0;
  float factor = k.exposureGain;
  if (k.contrastPower != 0.0) factor *= pow(max(mean / k.pivot, k.contrastFloor), k.contrastPower);
  float largest = factor * max(rgb.r, max(rgb.g, rgb.b));
  if (k.bent == 1 && largest > k.knee) {
    float room = 1.0 - k.knee;
    factor *= (k.knee + room * (1.0 - exp((k.knee - largest) / room))) / largest;
  }
  return rgb * factor;
}
