/**
 * Temperatures as people read them off a thermometer, in either scale.
 * The desk is always told degrees Celsius, to a tenth.
 */

const typed = /^([+-]?\d+(?:[.,]\d+)?)\s*(?:°|deg)?\s*([CF])?$/i

/** Degrees Celsius of degrees Fahrenheit: (°F - 32) / 1.8, by the definition of the scale. */
export function fahrenheitToCelsius(fahrenheit: number): number {
  return (fahrenheit - 32) / 1.8
}

/** Degrees Fahrenheit of degrees Celsius. */
export function celsiusToFahrenheit(celsius: number): number {
  return celsius * 1.8 + 32
}

/**
 * Reads a typed temperature: `4`, `-18.5`, `3,5 °C`, `39F`. A number alone is Celsius.
 * Answers degrees Celsius to a tenth, or null where it is no temperature.
 */
export function readTemperature(text: string): number | null {
  const read = typed.exec(text.trim().replace(/^[−–]/, '-'))
  if (!read) return null
  const degrees = Number((read[1] ?? '').replace(',', '.'))
  return toTenth(read[2]?.toUpperCase() === 'F' ? fahrenheitToCelsius(degrees) : degrees)
}

/** The temperature in both scales: `4.0 °C (39 °F)`. */
export function bothScales(celsius: number): string {
  return `${withMinus(celsius.toFixed(1))} °C (${withMinus(celsiusToFahrenheit(celsius).toFixed(0))} °F)`
}

/** Rounds half away from zero, and never leaves a negative nought. */
function toTenth(degrees: number): number {
  return Number(degrees.toFixed(1)) || 0
}

/** A true minus sign, which a hyphen in front of a number is easily overlooked for. */
function withMinus(digits: string): string {
  return digits.replace(/^-(?=0*\.?0*$)/, '').replace(/^-/, '−')
}
