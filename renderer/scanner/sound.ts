/**
 * Three short sounds: a rising one for done, a low double one for refused, three high ones that fall for
 * a wrong label. Never the only sign.
 */
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

/** Pitches in hertz, one after another, and the seconds between their starts. */
const sounds = {
  done: { pitches: [880, 1320], step: 0.08 },
  refused: { pitches: [220, 196], step: 0.14 },
  'wrong-label': { pitches: [1760, 1320, 880], step: 0.13 },
} as const
export type Sound = keyof typeof sounds

export function playSound(kind: Sound): void {
  if (!isSoundOn() || typeof AudioContext === 'undefined') return
  audio ??= new AudioContext()
  const { pitches, step } = sounds[kind]
  for (const [place, hertz] of pitches.entries()) tone(audio, hertz, place * step, 0.12)
}
