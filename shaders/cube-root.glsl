// Cube root with its sign kept. One Newton step repairs the last bits that pow leaves open on some devices.
vec3 cubeRoot(vec3 x) {
  vec3 size = max(abs(x), vec3(1e-30));
  vec3 root = pow(size, vec3(1.0 / 3.0));
  root -= (root - size / (root * root)) / 3.0;
  return sign(x) * root;
}
