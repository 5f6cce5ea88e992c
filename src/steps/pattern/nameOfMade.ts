/** "lid.3mf" as "lid pattern.stl"; a pattern made from a made pattern keeps its name. */
export function nameOfMade(fileName: string): string {
  const stem = fileName.replace(/\.[^.]+$/u, '');
  return `${stem.replace(/ pattern$/u, '')} pattern.stl`;
}
