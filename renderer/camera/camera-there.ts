/** Whether this machine has a camera that this page may ask for. */
import { useEffect, useState } from 'react'

async function hasCamera(): Promise<boolean> {
  const devices = await navigator.mediaDevices.enumerateDevices()
  return devices.some(({ kind }) => kind === 'videoinput')
}

/** Looks again when something is plugged in or out. */
export function useCameraThere(): boolean {
  const [isThere, setThere] = useState(false)
  useEffect(() => {
    // Absent where the page's address is not a secure one.
    const media: MediaDevices | undefined = navigator.mediaDevices
    if (media === undefined) return
    const look = () => void hasCamera().then(setThere, () => setThere(false))
    look()
    media.addEventListener('devicechange', look)
    return () => media.removeEventListener('devicechange', look)
  }, [])
  return isThere
}
