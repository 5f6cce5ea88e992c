/// <reference types="vite-plugin-pwa/client" />

/** Version of package.json, put in at build time. */
declare const workbookVersion: string;
