/** The saved text of a project: whatever is valid comes back as it was, whatever is not is told apart. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { decodeProject, encodeProject } from '../../src/workbook/envelope';
import { currentFormat } from '../../src/workbook/migrations';
import { newProject } from '../../src/workbook/project';
import { arbitraryProject } from './arbitraryProject';
import { propertySeed, withoutChecksum } from './support';

const project = newProject({ id: 'a', enclosure: 'Lamp', name: 'Lid', at: '2026-01-05T08:00:00.000Z' });

/** The text of the project after a change to its plain JSON. */
function textWith(
  change: (envelope: { format: unknown; kind: unknown; project: Record<string, unknown> }) => void,
): string {
  const envelope = JSON.parse(withoutChecksum(encodeProject(project)));
  change(envelope);
  return JSON.stringify(envelope);
}

function reasonFor(text: string): string {
  const loaded = decodeProject(text);
  return loaded.outcome === 'damaged' ? loaded.reason : `not damaged but ${loaded.outcome}`;
}

describe(`saved text of a project (seed ${propertySeed})`, () => {
  it('comes back field by field for any valid project', () => {
    fc.assert(
      fc.property(arbitraryProject, (any) => {
        expect(decodeProject(encodeProject(any))).toEqual({ outcome: 'ok', project: any });
      }),
    );
  });

  it('is damaged when it breaks off anywhere', () => {
    const text = encodeProject(project);
    fc.assert(
      fc.property(fc.nat(text.length - 1), (length) => {
        expect(decodeProject(text.slice(0, length)).outcome).toBe('damaged');
      }),
    );
  });

  it('never throws and never hands over a project for arbitrary JSON', () => {
    fc.assert(
      fc.property(fc.json(), (json) => {
        expect(decodeProject(json).outcome).toBe('damaged');
      }),
    );
  });

  it('is damaged, with the fields named, when a field has the wrong shape', () => {
    expect(reasonFor(textWith((e) => (e.project['name'] = 7)))).toBe('not as it should be: name');
    expect(reasonFor(textWith((e) => (e.project['inputs'] = {})))).toContain('inputs.part');
    expect(reasonFor(textWith((e) => delete e.project['record']))).toBe('not as it should be: record');
  });

  it('is damaged when a number is out of its range', () => {
    const text = withoutChecksum(encodeProject(project)).replace(
      '"wrongShareAllowedPercent":5',
      '"wrongShareAllowedPercent":-1',
    );
    expect(reasonFor(text)).toBe('not as it should be: inputs.walls.wrongShareAllowedPercent');
  });

  it('is damaged when kind, format or project is missing', () => {
    expect(reasonFor(textWith((e) => (e.kind = 'something')))).toBe('it is not a saved project');
    expect(reasonFor(textWith((e) => (e.format = '2')))).toBe('its format number is missing');
    expect(reasonFor(textWith((e) => (e.format = 0)))).toBe('its format number is missing');
    expect(reasonFor(JSON.stringify({ kind: 'mold-layup-project', format: 2 }))).toBe(
      'the project inside is missing',
    );
  });

  it('is newer, not damaged, for a later format, however strange it looks', () => {
    const text = textWith((e) => {
      e.format = currentFormat + 1;
      e.project = { later: 'shape' };
    });
    expect(decodeProject(text)).toEqual({ outcome: 'newer', format: currentFormat + 1 });
  });

  it('is never taken for another project after any one bit of it has flipped', () => {
    const text = encodeProject(project);
    const outcomes = { damaged: 0, ok: 0 };
    for (let at = 0; at < text.length; at += 1)
      for (let bit = 0; bit < 16; bit += 1) {
        const unit = String.fromCharCode(text.charCodeAt(at) ^ (1 << bit));
        const loaded = decodeProject(text.slice(0, at) + unit + text.slice(at + 1));
        // A flip in the word "checksum" itself leaves a text of an app before checksums, with the project whole.
        if (loaded.outcome === 'ok') expect(loaded.project).toEqual(project);
        else expect(loaded.outcome).toBe('damaged');
        outcomes[loaded.outcome as 'damaged' | 'ok'] += 1;
      }
    expect(outcomes.ok).toBeLessThanOrEqual(16 * 'checksum'.length);
    expect(outcomes.damaged + outcomes.ok).toBe(16 * text.length);
  });

  it('of an app before checksums still opens', () => {
    expect(decodeProject(withoutChecksum(encodeProject(project)))).toEqual({ outcome: 'ok', project });
  });

  it('is checked without code made at run time, which the content security policy forbids', () => {
    expect(z.config().jitless).toBe(true);
  });
});
