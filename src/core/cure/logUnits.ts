/** Temperature units of a log's columns. */

export type LogTemperatureUnit = '°C' | '°F' | 'K';

/** Of a heading such as "Air (°F)" or "TC2 [C]"; null when it names none. */
export function temperatureUnitIn(heading: string): LogTemperatureUnit | null {
  if (/°\s*f|deg\s*f|fahrenheit|[([/_\s]f[)\]]?\s*$/iu.test(heading)) return '°F';
  if (/°\s*c|deg\s*c|celsius|[([/_\s]c[)\]]?\s*$/iu.test(heading)) return '°C';
  return /kelvin|[([/_]k[)\]]?\s*$/iu.test(heading) ? 'K' : null;
}

/** A heading of something that is no temperature. */
export const isOther = (heading: string): boolean =>
  /%|humid|\brh\b|volt|\bmv\b|duty|set\s*point|\bsp\b|alarm|status|^\s*(?:no|nr|id|index|record|#)\b/iu.test(
    heading,
  );

/** By its first and highest reading: a run starts near room temperature. */
export function guessTemperatureUnit(first: number, highest: number): LogTemperatureUnit {
  if (first >= 250 && first <= 345) return 'K';
  return first >= 50 && first <= 100 && highest > 150 ? '°F' : '°C';
}

export function toCelsius(value: number, unit: LogTemperatureUnit): number {
  if (unit === 'K') return value - 273.15;
  return unit === '°F' ? (value - 32) / 1.8 : value;
}

/** An open or broken thermocouple reads far outside this, °C. */
export const readable = (celsius: number): boolean => celsius > -40 && celsius < 350;
