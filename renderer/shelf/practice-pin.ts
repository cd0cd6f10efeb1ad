/** Everyone's PIN on a practice day, kept so that the sign-in screen can say it. */
const settingKey = 'duskline.practice-pin'

export function keepPracticePin(pin: string): void {
  localStorage.setItem(settingKey, pin)
}

export function practicePin(): string | null {
  return localStorage.getItem(settingKey)
}
