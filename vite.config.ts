import react from '@vitejs/plugin-react';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import packageFacts from './package.json' with { type: 'json' };
import { contentSecurityPolicy } from './src/app/contentSecurityPolicy.ts';

/** Sent by `npm start`; any other static host is covered by the same policy as a meta tag in index.html. */
const headers = {
  // No other page may frame this one; browsers heed that in a header only.
  'Content-Security-Policy': `${contentSecurityPolicy}; frame-ancestors 'none'`,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
};

/** Tests without a page, a clock or storage of their own. */
const plainTests = ['core', 'checks', 'steps', 'pipeline', 'report', 'locks', 'checklist', 'paper'].map(
  (folder) => `tests/${folder}/**/*.test.ts`,
);

export default defineConfig({
  define: { workbookVersion: JSON.stringify(packageFacts.version) },
  plugins: [
    // Hot replacement of components needs a window; the scene is drawn in a worker.
    react({ refreshExclude: [/\/node_modules\//, /\/src\/viewer\/scene\//] }),
    {
      name: 'policy-meta-tag',
      transformIndexHtml: {
        order: 'pre',
        handler: (html, context) =>
          // The dev server injects its own inline scripts, which this policy rightly forbids.
          context.server
            ? html
            : html.replace(
                '<head>',
                `<head>\n    <meta http-equiv="Content-Security-Policy" content="${contentSecurityPolicy}" />`,
              ),
      },
    },
    VitePWA({
      // 'autoUpdate' would reload the page by itself and lose what is being typed.
      registerType: 'prompt',
      injectRegister: false,
      manifest: {
        name: 'Mold & Layup Workbook',
        short_name: 'Workbook',
        description: 'Will this mold and layup work? Numbers for the bench before any stone is poured.',
        start_url: './',
        display: 'standalone',
        background_color: '#f7f3e8',
        theme_color: '#f7f3e8',
        icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' }],
      },
      workbox: {
        globPatterns: ['**/*.{js,css,html,wasm,woff2,svg}'],
        maximumFileSizeToCacheInBytes: 8_000_000,
      },
    }),
  ],
  worker: { format: 'es' },
  build: { target: 'es2022' },
  preview: { headers },
  test: {
    // Against hanging only: property tests take seconds, and several times as many on a busy machine.
    testTimeout: 60_000,
    // Of two cores one would be left for the page that is not open.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: {
          name: 'plain',
          include: plainTests,
          // Plain functions: the files share what they import, which loaded anew for each took as long as the tests.
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'pages',
          setupFiles: ['tests/support/pageTests.setup.ts'],
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**', ...plainTests],
        },
      },
    ],
  },
});
