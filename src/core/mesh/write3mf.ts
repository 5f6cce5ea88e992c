import { strToU8, zipSync } from 'fflate';
import type { IndexedMesh } from './types';

const contentTypes =
  '<?xml version="1.0" encoding="UTF-8"?>\n<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>';
const relationships =
  '<?xml version="1.0" encoding="UTF-8"?>\n<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>';

/** Digits behind the point: a tenth of a micrometer. */
const decimals = 4;

/**
 * A 3MF package with the mesh as its one object, in millimeters (3MF core specification 1.3).
 * @param mesh in mm, wound outward
 */
export function write3mf({ positions, facets }: IndexedMesh): Uint8Array {
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">',
    '<resources><object id="1" type="model"><mesh><vertices>',
  ];
  const place = (at: number) => String(Number(positions[at]!.toFixed(decimals)));
  for (let at = 0; at < positions.length; at += 3)
    lines.push(`<vertex x="${place(at)}" y="${place(at + 1)}" z="${place(at + 2)}"/>`);
  lines.push('</vertices><triangles>');
  for (let at = 0; at < facets.length; at += 3)
    lines.push(`<triangle v1="${facets[at]}" v2="${facets[at + 1]}" v3="${facets[at + 2]}"/>`);
  lines.push('</triangles></mesh></object></resources><build><item objectid="1"/></build></model>');
  return zipSync({
    '[Content_Types].xml': strToU8(contentTypes),
    '_rels/.rels': strToU8(relationships),
    '3D/3dmodel.model': strToU8(lines.join('\n')),
  });
}
