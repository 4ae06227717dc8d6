/** Where the app is told of as one that can be installed. */
export const WEB_MANIFEST = 'manifest.webmanifest';

/** Icons by their file in src/app/assets, which is also their name in the build. `sizes`: px. */
export const ICONS = [
  { file: 'mark.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
  { file: 'icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
  { file: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
  { file: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
] as const;

/** For systems that take the icon from the page. */
export const TOUCH_ICON = 'icon-touch-180.png';

/** The folder of the icons in the build. */
export const ICON_FOLDER = 'icons';

/** The web manifest. All addresses are from the folder it lies in, so that the app works under any path. */
export const webManifest = () => ({
  name: 'Foamloft',
  short_name: 'Foamloft',
  description: 'From a sculpt to true-scale templates for sheet foam.',
  lang: 'en',
  id: './',
  start_url: './',
  scope: './',
  display: 'standalone',
  background_color: '#f3eee2',
  theme_color: '#24211d',
  categories: ['utilities', 'productivity'],
  icons: ICONS.map(({ file, ...icon }) => ({ src: `${ICON_FOLDER}/${file}`, ...icon })),
  // A job is opened in the window that is open, as when it is dropped there: the job before it stays at hand.
  launch_handler: { client_mode: ['focus-existing', 'auto'] },
  file_handlers: [
    {
      action: './',
      accept: { 'application/vnd.foamloft+json': ['.foamloft.json'] },
      icons: [{ src: `${ICON_FOLDER}/icon-192.png`, sizes: '192x192', type: 'image/png' }],
      launch_type: 'single-client',
    },
  ],
});
