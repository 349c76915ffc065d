// First of two steps over any colour filter array: gained green and gained colour differences of a whole tile.
out vec4 colour;

void main() {
  colour = vec4(mixedAt(ivec2(gl_FragCoord.xy) + codesOrigin), 0.0, 1.0);
}
