import { useRef, useState } from 'react'
import { Button } from '../parts/button.tsx'
import { deliverScan } from '../scanner/scans.ts'
import './camera-scanner.css'
import { useCameraThere } from './camera-there.ts'
import { useCamera } from './use-camera.ts'

/** The camera as a scanner, where a machine has one: what it sees goes where a scan goes. */
export function CameraScanner() {
  const isThere = useCameraThere()
  const [isOn, setOn] = useState(false)
  if (!isThere) return null
  return (
    <>
      <Button keyHint="Alt+K" onPress={() => setOn(!isOn)}>
        {isOn ? 'Camera off' : 'Camera'}
      </Button>
      {isOn && <Picture />}
    </>
  )
}

const words = {
  starting: 'The camera is starting.',
  looking: 'Hold a label before the camera.',
  refused: 'The camera is not to be had: another program may use it, or it was not allowed.',
}

function Picture() {
  const video = useRef<HTMLVideoElement>(null)
  const state = useCamera(video, deliverScan)
  return (
    <figure className="camera-picture">
      <video ref={video} muted playsInline aria-label="What the camera sees" />
      <figcaption role="status">{words[state]}</figcaption>
    </figure>
  )
}
