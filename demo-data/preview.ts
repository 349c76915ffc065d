// Looks at a scene without making a raw file: paints, balances on a named material, optionally exchanges red and blue and
// raises chroma, and writes a PNG. `npx tsx demo-data/preview.ts --scene meadow --megapixels 1.5 --out x.png`
// `--crop x,y,w,h` paints only those rows of the full-size frame, for judging detail at one to one.
import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { frameSize } from './frame-size.ts'
import { materialMixes, type MaterialName } from './light/materials.ts'
import { createPalette, type Palette } from './light/triplets.ts'
import { createBand } from './paint/canvas.ts'
import { encodePng } from './png-file.ts'
import { findFrame } from './roll.ts'

const { values } = parseArgs({
  options: {
    scene: { type: 'string' },
    megapixels: { type: 'string', default: '1.5' },
    out: { type: 'string', default: 'preview.png' },
    crop: { type: 'string' },
    neutral: { type: 'string', default: 'concrete' },
    light: { type: 'string', default: 'sun' },
    chroma: { type: 'string', default: '2' },
    exposure: { type: 'string', default: '0' },
    exchange: { type: 'string', default: 'yes' },
  },
})

function neutralGains(palette: Palette, name: string): number[] {
  if (!(name in materialMixes)) throw new Error(`--neutral ${name}: no such material.`)
  const t = palette.of(name as MaterialName).t
  const rgb = [0, 1, 2].map((c) => (values.light === 'overcast' ? t[6 + c] : t[c] + t[3 + c]))
  return rgb.map((v) => rgb[1] / v)
}

if (!values.scene) throw new Error('Say which scene: --scene meadow')
const frame = findFrame(values.scene)
const scene = await frame.scene()
const palette = createPalette(frame.sensor, frame.filter, frame.lowSun)
const size = frameSize(Number(values.megapixels), scene.aspect)
const started = performance.now()
const painter = scene.prepare(size, palette, frame.seed)
const prepared = performance.now()
const [cx, cy, cw, ch] = values.crop ? values.crop.split(',').map(Number) : [0, 0, size.width, size.height]
const rgb = new Uint8Array(cw * ch * 3)
const gains = neutralGains(palette, values.neutral)
const white = palette.of('white').t
const level = gains.reduce((sum, g, c) => sum + (g * (white[c] + white[3 + c])) / 3, 0)
const chroma = Number(values.chroma)
const gain = (2 ** Number(values.exposure) / level) * 1.15
const encode = (v: number) => (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055)
const rowsPerBand = 256
let clipped = 0
for (let y0 = cy; y0 < cy + ch; y0 += rowsPerBand) {
  const band = createBand(size.width, size.height, y0, Math.min(cy + ch, y0 + rowsPerBand))
  painter.paint(band)
  for (let y = band.y0; y < band.y1; y++) {
    for (let x = 0; x < cw; x++) {
      const i = (y - band.y0) * size.width + cx + x
      const raw = [band.r[i] * gains[0], band.g[i] * gains[1], band.b[i] * gains[2]]
      if (values.exchange === 'yes') raw.reverse()
      const mean = (raw[0] + raw[1] + raw[2]) / 3
      const o = ((y - cy) * cw + x) * 3
      for (let c = 0; c < 3; c++) {
        const v = (mean + (raw[c] - mean) * chroma) * gain
        const rolled = v < 0.7 ? Math.max(0, v) : 0.7 + 0.3 * (1 - Math.exp(-(v - 0.7) / 0.3))
        if (v > 1.2) clipped++
        rgb[o + c] = Math.round(255 * encode(rolled))
      }
    }
  }
}
const painted = performance.now()
writeFileSync(values.out, encodePng(rgb, cw, ch))
process.stdout.write(
  `${frame.id} ${size.width}×${size.height}: prepare ${Math.round(prepared - started)} ms, paint ${Math.round(painted - prepared)} ms, ` +
    `${((100 * clipped) / (3 * cw * ch)).toFixed(1)} % above white → ${values.out}\n`,
)
