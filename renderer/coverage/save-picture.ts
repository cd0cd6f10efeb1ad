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

/** What stands above a picture in its file: the first line is its title. */
export type Caption = readonly string[]

const svgSpace = 'http://www.w3.org/2000/svg'
const captionLine = 24

/** A file is for paper and other screens: it has the colours of the day, whatever the light is here. */
function inDaylight<T>(work: () => T): T {
  const { dataset } = document.documentElement
  const was = dataset.light
  dataset.light = 'day'
  try {
    return work()
  } finally {
    if (was === undefined) delete dataset.light
    else dataset.light = was
  }
}

interface Drawn {
  readonly text: string
  readonly width: number
  readonly height: number
}

/** The picture as text that looks the same anywhere, with its caption above it. */
function drawn(picture: SVGSVGElement, caption: Caption): Drawn {
  return inDaylight(() => {
    const copy = picture.cloneNode(true) as SVGSVGElement
    carryStyles(picture, copy)
    const { width, height } = picture.viewBox.baseVal
    const top = captionLine * caption.length + 12
    copy.setAttribute('xmlns', svgSpace)
    copy.setAttribute('viewBox', `0 ${-top} ${width} ${height + top}`)
    copy.setAttribute('width', String(width))
    copy.setAttribute('height', String(height + top))
    const { backgroundColor, color } = getComputedStyle(document.documentElement)
    copy.prepend(
      made('rect', { y: -top, width, height: height + top, fill: backgroundColor }),
      ...caption.map((line, at) =>
        made(
          'text',
          {
            x: 8,
            y: captionLine * (at + 1) - top,
            fill: color,
            'font-size': at === 0 ? 19 : 14,
            'font-weight': at === 0 ? 650 : 400,
          },
          line,
        ),
      ),
    )
    return { text: new XMLSerializer().serializeToString(copy), width, height: height + top }
  })
}

function made(name: string, attributes: Record<string, string | number>, text = ''): Element {
  const element = document.createElementNS(svgSpace, name)
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value))
  element.textContent = text
  return element
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

export function saveSvg(picture: SVGSVGElement, caption: Caption, name: string): void {
  saveBlob(new Blob([drawn(picture, caption).text], { type: 'image/svg+xml' }), `${name}.svg`)
}

/** Answers false where the browser could not draw it. */
export async function savePng(
  picture: SVGSVGElement,
  caption: Caption,
  name: string,
): Promise<boolean> {
  const blob = await pngOf(drawn(picture, caption))
  if (blob === null) return false
  saveBlob(blob, `${name}.png`)
  return true
}

async function pngOf({ text, width, height }: Drawn): Promise<Blob | null> {
  const image = new Image()
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`
  await image.decode()
  const canvas = document.createElement('canvas')
  canvas.width = width * 2
  canvas.height = height * 2
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height)
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/png'))
}

function saveBlob(blob: Blob, name: string): void {
  const url = URL.createObjectURL(blob)
  saveUrl(name, url)
  setTimeout(() => URL.revokeObjectURL(url), 10_000)
}
