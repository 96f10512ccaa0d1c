/** [K] of 0 °C, exact by definition (SI Brochure, 9th edition, 2.3.1). */
export const KELVIN_OF_ZERO_CELSIUS = 273.15;

/** [K] from [°C]. @example kelvinFromCelsius(-40) // 233.15 */
export function kelvinFromCelsius(celsius: number): number {
  return celsius + KELVIN_OF_ZERO_CELSIUS;
}

/** [°C] from [K]. */
export function celsiusFromKelvin(kelvin: number): number {
  return kelvin - KELVIN_OF_ZERO_CELSIUS;
}

/** [°C] from [°F]. @example celsiusFromFahrenheit(-40) // -40 */
export function celsiusFromFahrenheit(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9;
}

/** [°F] from [°C]. */
export function fahrenheitFromCelsius(celsius: number): number {
  return (celsius * 9) / 5 + 32;
}
