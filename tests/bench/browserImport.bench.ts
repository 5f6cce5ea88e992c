/**
 * Import to finished maps (ray and ball wall, draft, trapped) in a real browser on the built app, with the longest
 * task on the page's own thread and the memory of the page's process meanwhile. `npm run bench` builds first. Machines
 * differ and are shared: the time is also told as a multiple of what three-mesh-bvh takes for the ray walls alone.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { preview } from 'vite';
import { writeStlBinary } from '../../src/core/mesh/writeStl';
import { findChromium } from '../browser/support/findChromium';
import { shellOfTriangles } from '../support/meshes';
import { roundedShell } from '../support/roundedShell';
import { comparisonRaysS } from './walls.bench';

interface PageMarks {
  startMs: number;
  mapsMs: number;
  savedMs: number;
  longestTaskMs: number;
}

/** Process of the page with its workers: of the renderers of this profile the largest. */
function rendererPid(profile: string): string {
  let [found, largestMb] = ['', 0];
  for (const pid of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    try {
      const command = readFileSync(`/proc/${pid}/cmdline`, 'utf8');
      if (!command.includes('--type=renderer') || !command.includes(profile)) continue;
      const mb = ownMb(pid);
      if (mb > largestMb) [found, largestMb] = [pid, mb];
    } catch {
      // The process ended while it was looked at.
    }
  }
  return found;
}

/**
 * Own memory of a process, MB: anonymous and shared pages, without the browser's code, which is mapped into every process
 * and counted as resident in each.
 */
function ownMb(pid: string): number {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8');
  const kb = [...status.matchAll(/(?:RssAnon|RssShmem):\s+(\d+)/g)].map((match) => Number(match[1]));
  return kb.reduce((sum, one) => sum + one, 0) / 1024;
}

async function importOnce(page: Page, path: string): Promise<PageMarks> {
  await page.evaluate(() => {
    const marks = { startMs: 0, mapsMs: 0, savedMs: 0, longestTaskMs: 0 };
    Object.assign(globalThis, { marks });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        if (marks.startMs > 0 && entry.startTime + entry.duration >= marks.startMs)
          marks.longestTaskMs = Math.max(marks.longestTaskMs, entry.duration);
      }
    }).observe({ type: 'longtask' });
    document.addEventListener(
      'change',
      () => {
        marks.startMs = performance.now();
        // No named functions in here: the bench's compiler would mark them with a helper that the page lacks.
        const timer = setInterval(() => {
          const known =
            document.querySelector('nav[aria-label="Steps"] li:nth-child(2) [aria-label="not yet known"]') ===
            null;
          if (marks.mapsMs === 0 && known) marks.mapsMs = performance.now();
          if (marks.mapsMs === 0 || document.querySelector('progress') !== null) return;
          marks.savedMs = performance.now();
          clearInterval(timer);
        }, 10);
      },
      { capture: true, once: true },
    );
  });
  await page.getByLabel('Model file').setInputFiles(path);
  // Asked from outside: the page's policy forbids the text-as-code that waiting inside it would need.
  const marksNow = () => page.evaluate(() => (globalThis as unknown as { marks: PageMarks }).marks);
  for (const deadline = Date.now() + 120_000; (await marksNow()).savedMs === 0;) {
    if (Date.now() > deadline) throw new Error(`importing ${path} did not end within two minutes`);
    await page.waitForTimeout(100);
  }
  await page.waitForTimeout(300);
  return await marksNow();
}

export async function benchBrowserImport(): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'workbook-bench-'));
  const server = await preview({ preview: { host: '127.0.0.1', port: 4187, strictPort: true } });
  const lines: string[] = [];
  try {
    const cases = [
      { shell: 'dome', triangles: 50_000, view: true },
      { shell: 'box', triangles: 300_000, view: true },
      { shell: 'box', triangles: 300_000, view: false },
      { shell: 'dome', triangles: 300_000, view: true },
      { shell: 'dome', triangles: 300_000, view: false },
      { shell: 'box', triangles: 1_000_000, view: true },
      { shell: 'box', triangles: 1_000_000, view: false },
      { shell: 'dome', triangles: 1_000_000, view: true },
      { shell: 'dome', triangles: 1_000_000, view: false },
      { shell: 'dome', triangles: 2_000_000, view: true },
    ] as const;
    for (const { shell, triangles, view } of cases) {
      const path = join(folder, `${shell}-${triangles}.stl`);
      const mesh = (shell === 'box' ? roundedShell : shellOfTriangles)(triangles);
      writeFileSync(path, writeStlBinary(mesh));
      const comparisonS = comparisonRaysS(mesh);
      const profile = mkdtempSync(join(folder, 'profile-'));
      const context = await chromium.launchPersistentContext(profile, {
        executablePath: findChromium(),
        viewport: { width: 1366, height: 768 },
        args: ['--no-sandbox', '--disable-quic', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
      });
      const page = await context.newPage();
      // Without a graphics card the view is drawn by the processor, on the cores that measure.
      if (!view) await page.addInitScript(() => Reflect.deleteProperty(globalThis, 'WebGL2RenderingContext'));
      await page.goto('http://127.0.0.1:4187/');
      await page.getByRole('link', { name: 'All projects' }).click();
      await page.getByRole('button', { name: 'New project' }).click();
      await page.getByLabel('Enclosure', { exact: true }).fill('Bench');
      await page.getByLabel('Part, usually a half').fill(`${triangles}`);
      await page.getByRole('button', { name: 'Create' }).click();
      await page.getByRole('heading', { level: 1, name: 'Part' }).waitFor();
      // As long as a maker takes to find the file at the very least; the page gets ready meanwhile.
      await page.waitForTimeout(3000);
      const pid = rendererPid(profile);
      const emptyMb = ownMb(pid);
      let peakMb = 0;
      const watch = setInterval(() => (peakMb = Math.max(peakMb, ownMb(pid))), 50);
      const marks = await importOnce(page, path);
      clearInterval(watch);
      const mapsS = (marks.mapsMs - marks.startMs) / 1000;
      lines.push(
        `${shell} shell, ${(triangles / 1000).toFixed(0)}k triangles${view ? '' : ', no view'}: maps after ${mapsS.toFixed(2)} s ` +
          `(${(mapsS / comparisonS).toFixed(2)} x what three-mesh-bvh takes for its rays on one thread, ${comparisonS.toFixed(2)} s), saved after ` +
          `${((marks.savedMs - marks.startMs) / 1000).toFixed(2)} s, longest task on the page's thread ` +
          `${marks.longestTaskMs === 0 ? 'under 50' : marks.longestTaskMs.toFixed(0)} ms, page process peaks at ${peakMb.toFixed(0)} MB (${emptyMb.toFixed(0)} MB before the import)`,
      );
      await context.close();
    }
  } finally {
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  }
  return lines;
}
