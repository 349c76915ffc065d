// A drawing at half size, stretched over the canvas and filtered by the hardware. Upper left corners coincide.
uniform sampler2D drawing;
uniform float canvasHeight;
out vec4 colour;

void main() {
  vec2 size = 2.0 * vec2(textureSize(drawing, 0));
  vec2 place = gl_FragCoord.xy + vec2(0.0, size.y - canvasHeight);
  colour = vec4(texture(drawing, place / size).rgb, 1.0);
}
