// A rectangle of the target: the unit square stretched over `area` (left, bottom, right, top in clip space).
precision highp float;
in vec2 position;
uniform vec4 area;

void main() {
  gl_Position = vec4(mix(area.xy, area.zw, position), 0.0, 1.0);
}
