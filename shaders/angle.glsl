// Angles to single precision. The language leaves atan, sin and cos open to errors that show as hue steps, hence these (Cephes, Moshier).

// Angle of a vector in −π…π.
float angleOf(vec2 v) {
  vec2 size = abs(v);
  float large = max(max(size.x, size.y), 1e-30);
  float t = min(size.x, size.y) / large;
  bool steep = t > 0.41421356;
  float x = steep ? (t - 1.0) / (t + 1.0) : t;
  float z = x * x;
  float angle = (((0.0805374449538 * z - 0.138776856032) * z + 0.199777106478) * z - 0.333329491539) * z * x + x;
  if (steep) angle += 0.78539816;
  if (size.y > size.x) angle = 1.57079633 - angle;
  if (v.x < 0.0) angle = 3.14159265 - angle;
  return v.y < 0.0 ? -angle : angle;
}

// Cosine and sine of an angle.
vec2 directionOf(float angle) {
  float quarter = floor(angle * 0.63661977 + 0.5);
  float x = (angle - quarter * 1.5703125) - quarter * 4.83826794897e-4;
  float z = x * x;
  float sine = ((-1.9515295891e-4 * z + 8.3321608736e-3) * z - 0.16666654611) * z * x + x;
  float cosine = ((2.443315711809948e-5 * z - 1.388731625493765e-3) * z + 0.04166664568298827) * z * z - 0.5 * z + 1.0;
  int turn = int(quarter) & 3;
  vec2 direction = (turn & 1) == 1 ? vec2(-sine, cosine) : vec2(cosine, sine);
  return turn >= 2 ? -direction : direction;
}
