/** Two short sounds: a rising one for done, a low double one for refused. Never the only sign. */
const settingKey = 'duskline.sound'

export function isSoundOn(): boolean {
  return localStorage.getItem(settingKey) !== 'off'
}

export function setSound(on: boolean): void {
  localStorage.setItem(settingKey, on ? 'on' : 'off')
}

let audio: AudioContext | undefined

/** Pitch in hertz, start and length in seconds from now. */
function tone(context: AudioContext, hertz: number, start: number, length: number): void {
  const voice = new OscillatorNode(context, { type: 'triangle', frequency: hertz })
  const loudness = new GainNode(context, { gain: 0.25 })
  voice.connect(loudness).connect(context.destination)
  const from = context.currentTime + start
  loudness.gain.setTargetAtTime(0, from + length * 0.6, length * 0.15)
  voice.start(from)
  voice.stop(from + length)
}

export function playSound(kind: 'done' | 'refused'): void {
  if (!isSoundOn() || typeof AudioContext === 'undefined') return
  audio ??= new AudioContext()
  const [first, second] = kind === 'done' ? [880, 1320] : [220, 196]
  tone(audio, first, 0, 0.09)
  tone(audio, second, kind === 'done' ? 0.08 : 0.14, 0.12)
}
