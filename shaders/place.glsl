// Where a fragment lies on the sensor: `corner` is the frame's upper left in target pixels, `zoom` target pixels per sensor pixel.
// `rows` turns GL's upward rows into downward ones where the target is a screen: offset and sign.
uniform vec2 corner;
uniform float zoom;
uniform vec2 rows;
uniform vec2 frameSize;

vec2 sensorAt(vec2 fragment) {
  return (vec2(fragment.x, rows.x + rows.y * fragment.y) - corner) / zoom;
}
