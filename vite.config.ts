// Build, development server and test projects. The page is src/index.html; cross-origin isolation gives the decoder shared memory.
import react from '@vitejs/plugin-react'
import { playwright } from '@vitest/browser-playwright'
import { defineConfig } from 'vitest/config'
import { chromiumArguments, findChromium } from './src/commands/find-chromium.mjs'

const isolation = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
}

/** Parts of the component library that the screen is made of. */
const screenParts = [
  'Button',
  'Dialog',
  'FileTrigger',
  'GridList',
  'Group',
  'Heading',
  'Label',
  'ListBox',
  'Menu',
  'Modal',
  'Popover',
  'ProgressBar',
  'Select',
  'Switch',
  'Tooltip',
]

// Packages found only while a test runs would make the page reload in its middle.
const optimizeDeps = {
  include: [
    '@rgrove/parse-xml',
    'three',
    'colorjs.io',
    'comlink',
    'browser-fs-access',
    'geotiff',
    'idb',
    'valibot',
    'zustand',
    'zustand/vanilla',
    'react',
    'react-dom',
    'react-dom/client',
    'react/jsx-runtime',
    'react/jsx-dev-runtime',
    'lucide-react',
    ...screenParts.map((part) => `react-aria-components/${part}`),
  ],
  exclude: ['@jsquash/jpeg', 'libraw-wasm'],
}

// How long the bundler's own plug-ins took is nothing for someone who wants to see the page.
const quiet = { checks: { pluginTimings: false } }

export default defineConfig({
  root: 'src',
  publicDir: '../public',
  base: './',
  plugins: [react()],
  worker: { format: 'es', rolldownOptions: quiet },
  optimizeDeps,
  server: { headers: isolation, fs: { allow: ['..'] } },
  preview: { headers: isolation },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2023',
    chunkSizeWarningLimit: 2000,
    rolldownOptions: quiet,
    license: { fileName: 'third-party/package-licences.md' },
  },
  test: {
    root: '.',
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/gpu/**', 'tests/browser/**', 'tests/journey/**'],
          maxWorkers: '100%',
          testTimeout: 120_000,
        },
      },
      {
        extends: true,
        optimizeDeps: { ...optimizeDeps, include: [...optimizeDeps.include, 'axe-core', 'vitest-browser-react'] },
        test: {
          name: 'browser',
          include: ['tests/gpu/**/*.test.ts', 'tests/browser/**/*.test.{ts,tsx}'],
          fileParallelism: false,
          testTimeout: 120_000,
          // What is waited for may take its time on a busy machine; it still has to come.
          expect: { poll: { timeout: 10_000 } },
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({
              launchOptions: { executablePath: findChromium(), args: chromiumArguments },
            }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
      {
        extends: true,
        test: {
          name: 'journey',
          environment: 'node',
          include: ['tests/journey/**/*.test.ts'],
          globalSetup: 'tests/support/serve-journeys.ts',
          fileParallelism: false,
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
})
