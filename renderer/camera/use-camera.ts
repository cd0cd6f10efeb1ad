/** The camera's picture in a video, and the labels that it sees. */
import { type RefObject, useEffect, useRef, useState } from 'react'
import { createSeenOnce } from './seen-once.ts'

/** Between two pictures that are looked at; a person holds a label for longer. */
const everyMs = 150

/** Wide enough for a label held at arm's length, small enough to be read at once. */
const wanted = { video: { width: { ideal: 1280 }, facingMode: { ideal: 'environment' } } }

export type CameraState = 'starting' | 'looking' | 'refused'

/** Runs while the component is there. `onText` hears each label once. */
export function useCamera(
  video: RefObject<HTMLVideoElement | null>,
  onText: (text: string) => void,
): CameraState {
  const [state, setState] = useState<CameraState>('starting')
  const latest = useRef(onText)
  useEffect(() => {
    latest.current = onText
  })
  useEffect(() => {
    const worker = new Worker(new URL('./reader-worker.ts', import.meta.url), { type: 'module' })
    const isNew = createSeenOnce()
    let stream: MediaStream | undefined
    let isOver = false
    let isBusy = false
    worker.onmessage = ({ data: text }: MessageEvent<string | null>) => {
      isBusy = false
      if (isNew(text, performance.now()) && text !== null) latest.current(text)
    }
    const timer = setInterval(() => {
      const picture = isBusy ? undefined : pictureOf(video.current)
      if (!picture) return
      isBusy = true
      worker.postMessage(picture)
    }, everyMs)
    void navigator.mediaDevices.getUserMedia(wanted).then(
      async (opened) => {
        stream = opened
        if (isOver || !video.current) return stopAll(opened)
        video.current.srcObject = opened
        await video.current.play()
        setState('looking')
      },
      () => setState('refused'),
    )
    return () => {
      isOver = true
      clearInterval(timer)
      worker.terminate()
      if (stream) stopAll(stream)
    }
  }, [video])
  return state
}

function stopAll(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop()
}

let canvas: HTMLCanvasElement | undefined

function pictureOf(video: HTMLVideoElement | null): ImageData | undefined {
  if (!video || video.videoWidth === 0) return undefined
  canvas ??= document.createElement('canvas')
  canvas.width = video.videoWidth
  canvas.height = video.videoHeight
  const pen = canvas.getContext('2d', { willReadFrequently: true })
  if (!pen) return undefined
  pen.drawImage(video, 0, 0)
  return pen.getImageData(0, 0, canvas.width, canvas.height)
}
