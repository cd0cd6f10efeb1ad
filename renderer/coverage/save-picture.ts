/** A picture on the screen as a file of its own: SVG as drawn, or PNG at twice its size. */
import { saveUrl } from '../parts/pdf.ts'

/** What style sheets decide on the screen and a file must carry itself. */
const carried = [
  'fill',
  'fill-opacity',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'paint-order',
  'color',
  'font-family',
  'font-size',
  'font-weight',
  'text-anchor',
]

/** The picture as text that looks the same anywhere, on the ground it stands on here. */
export function svgText(picture: SVGSVGElement): string {
  const copy = picture.cloneNode(true)
  if (!(copy instanceof SVGSVGElement)) return ''
  carryStyles(picture, copy)
  const { width, height } = picture.viewBox.baseVal
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  copy.setAttribute('width', String(width))
  copy.setAttribute('height', String(height))
  const ground = document.createElementNS('http://www.w3.org/2000/svg', 'rect')
  ground.setAttribute('width', String(width))
  ground.setAttribute('height', String(height))
  ground.setAttribute('fill', getComputedStyle(document.documentElement).backgroundColor)
  copy.prepend(ground)
  return new XMLSerializer().serializeToString(copy)
}

function carryStyles(from: Element, to: Element): void {
  const style = getComputedStyle(from)
  for (const name of carried) to.setAttribute(name, style.getPropertyValue(name))
  to.removeAttribute('class')
  for (const [at, child] of [...from.children].entries()) {
    const copied = to.children[at]
    if (copied) carryStyles(child, copied)
  }
}

export function saveSvg(picture: SVGSVGElement, name: string): void {
  saveBlob(new Blob([svgText(picture)], { type: 'image/svg+xml' }), `${name}.svg`)
}

/** Answers false where the browser could not draw it. */
export async function savePng(picture: SVGSVGElement, name: string): Promise<boolean> {
  const blob = await pngOf(svgText(picture), picture.viewBox.baseVal)
  if (blob === null) return false
  saveBlob(blob, `${name}.png`)
  return true
}

async function pngOf(text: string, size: { width: number; height: number }): Promise<Blob | null> {
  const image = new Image()
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`
  await image.decode()
  const canvas = document.createElement('canvas')
  canvas.width = size.width * 2
  canvas.height = size.height * 2
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height)
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/png'))
}

function saveBlob(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob)
  saveUrl(name, url)
  setTimeout(() => URL.revokeObjectURL(url), 10_000)
}
