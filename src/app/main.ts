import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './tokens.css';
import './app.ts';
