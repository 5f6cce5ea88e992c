/// <reference types="vite/client" />

/** Version of package.json, put in at build time. */
declare const workbookVersion: string;
